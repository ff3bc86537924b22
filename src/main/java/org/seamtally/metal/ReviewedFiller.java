package org.seamtally.metal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;
import org.seamtally.metal.Reason.Step;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * What the review finds of one filler.
 *
 * @param rank from 1 on
 * @param rod the filler
 * @param weldMetal analysis of the diluted weld metal
 * @param carbonEquivalents of the weld metal
 * @param idealDiameter of the weld metal
 * @param martensiteStart of the weld metal
 * @param preheat the advice
 * @param cautionedForCracking whether the weld metal hardens more than the tube does
 * @param decidedBy the step that parts it from the one after it (the last from the one before it); empty where nothing does
 * @param reasons for its place, in the order of the steps
 * @param cautions on the filler
 */
public record ReviewedFiller(
        int rank,
        Rod rod,
        Composition weldMetal,
        CarbonEquivalents carbonEquivalents,
        IdealDiameter idealDiameter,
        MartensiteStart martensiteStart,
        PreheatAdvice preheat,
        boolean cautionedForCracking,
        Optional<Step> decidedBy,
        List<Reason> reasons,
        List<Caution> cautions) {

    /** The elements that A255 counts and that fillers are alloyed with: those a reason may name. */
    private static final List<Element> HARDENERS = List.of(Element.C, Element.MN, Element.NI, Element.CR, Element.MO);

    /** Copies the lists. */
    public ReviewedFiller {
        reasons = List.copyOf(reasons);
        cautions = List.copyOf(cautions);
    }

    /** Reviews one filler by itself; the rank is given by {@link #placed}. */
    static ReviewedFiller of(BaseReview base, Rod rod, WeldingConditions conditions) {
        Composition weldMetal = Dilution.mix(base.metal().composition(), rod.composition(), conditions.dilution());
        IdealDiameter diameter = IdealDiameter.of(weldMetal);
        PreheatAdvice preheat = PreheatAdvice.of(base.metal(), rod, conditions);
        boolean cracking = hardensMoreThanTheTube(weldMetal, diameter, base);
        List<Reason> reasons = List.of(
                new Reason(Step.CRACKING, hardenability(base, weldMetal, diameter)),
                new Reason(Step.PREHEAT, preheat.why()),
                new Reason(Step.STRENGTH, strength(base.metal(), rod)));
        return new ReviewedFiller(
                1,
                rod,
                weldMetal,
                CarbonEquivalents.of(weldMetal),
                diameter,
                MartensiteStart.of(weldMetal),
                preheat,
                cracking,
                Optional.empty(),
                reasons,
                cautions(base, rod, conditions, preheat, diameter, cracking));
    }

    /**
     * Cautioned for cracking: a decision of this project. Weld metal that is more hardenable than the tube and hardenable
     * at all shrinks onto a zone that has transformed before it, and cracks where hydrogen is left.
     */
    private static boolean hardensMoreThanTheTube(Composition weldMetal, IdealDiameter diameter, BaseReview base) {
        return diameter.diameter() > base.idealDiameter().diameter() && PreheatAdvice.hardenable(weldMetal);
    }

    /** The same filler with its place, and the reason that parts it from its neighbour in the order. */
    ReviewedFiller placed(int place, Optional<ReviewedFiller> neighbour, BaseMetal base) {
        Optional<Step> by = neighbour.flatMap(other -> key(base).partedFrom(other.key(base)));
        List<Reason> all = new ArrayList<>(reasons);
        by.ifPresent(step -> all.add(new Reason(step, Phrase.of(decision(step, neighbour.orElseThrow(), base)))));
        return new ReviewedFiller(
                place,
                rod,
                weldMetal,
                carbonEquivalents,
                idealDiameter,
                martensiteStart,
                preheat,
                cautionedForCracking,
                by,
                all,
                cautions);
    }

    RankKey key(BaseMetal base) {
        return RankKey.of(base, rod, cautionedForCracking, preheat.advised());
    }

    private String decision(Step step, ReviewedFiller neighbour, BaseMetal base) {
        boolean before = RankKey.ORDER.compare(key(base), neighbour.key(base)) < 0;
        String by = switch (step) {
            case CRACKING -> "only one of the two is cautioned for cracking";
            case PREHEAT -> "the one needs less preheat";
            case STRENGTH -> "the strength of the one comes nearer the tube's from below";
            case NAME -> "nothing else parts them and the names are in that order";
        };
        return "Ranked " + (before ? "before " : "after ") + neighbour.rod().name() + ", since " + by + ".";
    }

    private static Phrase hardenability(BaseReview base, Composition weldMetal, IdealDiameter diameter) {
        double ofTube = base.idealDiameter().diameter();
        boolean more = diameter.diameter() > ofTube;
        String elements = String.join(
                ", ",
                HARDENERS.stream()
                        .filter(element -> weldMetal.of(element)
                                > base.metal().composition().of(element))
                        .map(Element::symbol)
                        .toList());
        return Phrase.of(
                "The diluted weld metal has an ideal diameter of {} against the tube's {}: it is "
                        + (more ? "more" : "no more") + " hardenable than the tube"
                        + (more && !elements.isEmpty() ? ", since it holds more " + elements + "." : "."),
                Phrase.measured(Dimension.LENGTH, diameter.diameter()),
                Phrase.measured(Dimension.LENGTH, ofTube));
    }

    private static Phrase strength(BaseMetal base, Rod rod) {
        OptionalDouble ofRod = rod.tensileStrength();
        OptionalDouble ofTube = base.tensileStrength();
        if (ofRod.isEmpty() || ofTube.isEmpty()) {
            return Phrase.of("The tensile strength of the " + (ofRod.isEmpty() ? "filler" : "tube")
                    + " is not given: strength cannot be compared.");
        }
        return Phrase.of(
                "The undiluted weld metal has at least {} against the tube's {}.",
                Phrase.measured(Dimension.STRESS, ofRod.getAsDouble()),
                Phrase.measured(Dimension.STRESS, ofTube.getAsDouble()));
    }

    private static List<Caution> cautions(
            BaseReview base,
            Rod rod,
            WeldingConditions conditions,
            PreheatAdvice preheat,
            IdealDiameter diameter,
            boolean cracking) {
        List<Caution> cautions = new ArrayList<>();
        if (cracking) {
            cautions.add(new Caution(
                    "weld-metal-cracking",
                    "The diluted weld metal is more hardenable than the tube: it may crack where hydrogen is left or the"
                            + " parts are held. Preheat, low hydrogen and slow cooling are due."));
        }
        preheat.advised()
                .ifPresent(kelvin -> cautions.add(new Caution(
                        "preheat-advised",
                        Phrase.of(
                                "Preheat to {} is advised; the qualified procedure stands over it.",
                                Phrase.measured(Dimension.TEMPERATURE, kelvin)))));
        if (conditions.hydrogen() > PreheatAdvice.LOW_HYDROGEN) {
            cautions.add(new Caution(
                    "hydrogen",
                    "More than 5 mL/100 g of hydrogen is more than a clean rod under dry gas brings: look for dirt, oil,"
                            + " rust or moist gas."));
        }
        if (belowTheTube(base.metal(), rod)) {
            cautions.add(new Caution(
                    "strength-below-base",
                    "The weld metal is of a lower strength class than the tube: usual for thin tube, but the throat has to"
                            + " be designed for it."));
        }
        if (!rod.strengthAsWelded()) {
            cautions.add(new Caution(
                    "strength-after-heat-treatment",
                    "Its standard tests this filler after a heat treatment of the weld; as welded it is harder and less"
                            + " tough."));
        }
        if (!diameter.insideRange()) {
            cautions.add(new Caution(
                    "outside-range",
                    "The weld metal's analysis lies outside the range of ASTM A255; its ideal diameter is an"
                            + " extrapolation: " + String.join("; ", diameter.outside()) + "."));
        }
        return cautions;
    }

    private static boolean belowTheTube(BaseMetal base, Rod rod) {
        return rod.tensileStrength().isPresent()
                && base.tensileStrength().isPresent()
                && rod.tensileStrength().getAsDouble() < base.tensileStrength().getAsDouble();
    }
}
