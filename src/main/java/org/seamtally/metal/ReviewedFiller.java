package org.seamtally.metal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamtally.catalogue.Composition;
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

    /** Copies the lists. */
    public ReviewedFiller {
        reasons = List.copyOf(reasons);
        cautions = List.copyOf(cautions);
    }

    /** Reviews one filler by itself; the rank is given by {@link #placed}. */
    static ReviewedFiller of(WeldedPair pair, WeldingConditions conditions) {
        PreheatAdvice preheat = PreheatAdvice.of(pair, conditions);
        Analysed weldMetal = pair.weldMetal();
        boolean cracking = pair.hardensMoreThanTheTube();
        List<Reason> reasons = List.of(
                new Reason(Step.CRACKING, pair.hardenability()),
                new Reason(Step.PREHEAT, preheat.why()),
                new Reason(Step.STRENGTH, pair.strength()));
        return new ReviewedFiller(
                1,
                pair.rod(),
                weldMetal.composition(),
                weldMetal.carbonEquivalents(),
                weldMetal.idealDiameter(),
                weldMetal.martensiteStart(),
                preheat,
                cracking,
                Optional.empty(),
                reasons,
                cautions(pair, conditions, preheat, cracking));
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

    private static List<Caution> cautions(
            WeldedPair pair, WeldingConditions conditions, PreheatAdvice preheat, boolean cracking) {
        IdealDiameter diameter = pair.weldMetal().idealDiameter();
        List<Caution> cautions = new ArrayList<>();
        if (cracking) {
            cautions.add(new Caution(
                    "weld-metal-cracking",
                    "The diluted weld metal is more hardenable than the base metal: it may crack where hydrogen is left or the"
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
        if (belowTheTube(pair.base(), pair.rod())) {
            cautions.add(new Caution(
                    "strength-below-base",
                    "The weld metal is of a lower strength class than the base metal: usual for thin tube, but the throat has"
                            + " to be designed for it."));
        }
        if (!pair.rod().strengthAsWelded()) {
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
