package org.seamtally.metal;

import java.util.List;
import java.util.OptionalDouble;
import org.seamtally.catalogue.Element;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * A tube and a filler at one dilution: what holds of them at whatever heat, so that it is worked out once for all the joints
 * that are welded so.
 */
public final class WeldedPair {

    /** The elements that A255 counts and that fillers are alloyed with: those a reason may name. */
    private static final List<Element> HARDENERS = List.of(Element.C, Element.MN, Element.NI, Element.CR, Element.MO);

    private final BaseMetal base;
    private final Rod rod;
    private final Analysed tube;
    private final Analysed weldMetal;
    private final Phrase hardenability;
    private final Phrase strength;

    private WeldedPair(BaseMetal base, Analysed tube, Rod rod, double dilution) {
        this.base = base;
        this.rod = rod;
        this.tube = tube;
        this.weldMetal = Analysed.of(Dilution.mix(base.composition(), rod.composition(), dilution));
        this.hardenability = describedHardenability();
        this.strength = describedStrength();
    }

    /**
     * Pairs a tube and a filler.
     *
     * @param dilution share of base metal in the weld metal, 0 to 1
     */
    public static WeldedPair of(BaseMetal base, Rod rod, double dilution) {
        return of(base, Analysed.of(base.composition()), rod, dilution);
    }

    static WeldedPair of(BaseMetal base, Analysed tube, Rod rod, double dilution) {
        return new WeldedPair(base, tube, rod, dilution);
    }

    BaseMetal base() {
        return base;
    }

    Rod rod() {
        return rod;
    }

    /** The tube's steel. */
    Analysed tube() {
        return tube;
    }

    /** The diluted weld metal. */
    Analysed weldMetal() {
        return weldMetal;
    }

    /**
     * Cautioned for cracking: a decision of this project. Weld metal that is more hardenable than the tube and hardenable
     * at all shrinks onto a zone that has transformed before it, and cracks where hydrogen is left.
     */
    boolean hardensMoreThanTheTube() {
        return weldMetal.idealDiameter().diameter() > tube.idealDiameter().diameter() && weldMetal.hardenable();
    }

    /** How hardenable the weld metal is beside the tube, in words. */
    Phrase hardenability() {
        return hardenability;
    }

    /** How strong the filler is beside the tube, in words. */
    Phrase strength() {
        return strength;
    }

    private Phrase describedHardenability() {
        double ofWeld = weldMetal.idealDiameter().diameter();
        double ofTube = tube.idealDiameter().diameter();
        boolean more = ofWeld > ofTube;
        String elements = String.join(
                ", ",
                HARDENERS.stream()
                        .filter(element -> weldMetal.composition().of(element)
                                > base.composition().of(element))
                        .map(Element::symbol)
                        .toList());
        return Phrase.of(
                "The diluted weld metal has an ideal diameter of {} against the tube's {}: it is "
                        + (more ? "more" : "no more") + " hardenable than the tube"
                        + (more && !elements.isEmpty() ? ", since it holds more " + elements + "." : "."),
                Phrase.measured(Dimension.LENGTH, ofWeld),
                Phrase.measured(Dimension.LENGTH, ofTube));
    }

    private Phrase describedStrength() {
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
}
