package org.seamtally.metal;

import java.util.OptionalDouble;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Filler;

/**
 * The filler, as the review takes it.
 *
 * @param name its classification, or the shop's own word for its analysis
 * @param composition its analysis
 * @param tensileStrength least tensile strength of the undiluted weld metal, Pa; empty where it is not known
 * @param strengthAsWelded false where that strength is the one after a heat treatment of the weld
 */
public record Rod(String name, Composition composition, OptionalDouble tensileStrength, boolean strengthAsWelded) {

    /**
     * The greatest strength that still counts as the 70 ksi class, Pa: 72 ksi and what rounds to it, since older editions
     * of AWS A5.18 ask for 72 ksi (from memory) where the 2005 edition asks for 70 (read in a second-hand copy).
     */
    private static final double SEVENTY_KSI_CLASS = 72.05 * Customary.PASCALS_A_KSI;

    /** @throws IllegalArgumentException where a strength is given that is not positive */
    public Rod {
        tensileStrength.ifPresent(strength -> Given.positive("tensile strength", strength));
    }

    /** A filler of the catalogue, with its typical analysis. */
    public static Rod of(Filler filler) {
        return new Rod(
                filler.classification(),
                filler.typical(),
                filler.leastTensileStrength(),
                filler.testCondition().equals("as welded"));
    }

    /** A filler of which nothing but an analysis is known. */
    public static Rod ofAnalysis(String name, Composition composition) {
        return new Rod(name, composition, OptionalDouble.empty(), true);
    }

    /** Whether it is known to be no stronger than the 70 ksi class. */
    boolean ofSeventyKsiClass() {
        return tensileStrength.isPresent() && tensileStrength.getAsDouble() <= SEVENTY_KSI_CLASS;
    }
}
