package org.seamtally.metal;

import org.seamtally.catalogue.Composition;

/**
 * An analysis and what depends on it alone.
 *
 * @param composition the analysis
 * @param carbonEquivalents of it
 * @param idealDiameter of it
 * @param martensiteStart of it
 */
record Analysed(
        Composition composition,
        CarbonEquivalents carbonEquivalents,
        IdealDiameter idealDiameter,
        MartensiteStart martensiteStart) {

    /**
     * CE(IIW) above which a steel counts as hardenable, mass per cent: common practice, no source; the usual line below
     * which thin carbon steel is welded cold, whatever the filler.
     */
    private static final double HARDENABLE = 0.45;

    static Analysed of(Composition composition) {
        return new Analysed(
                composition,
                CarbonEquivalents.of(composition),
                IdealDiameter.of(composition),
                MartensiteStart.of(composition));
    }

    /** Whether it hardens enough beside the seam for the least preheat of common practice. */
    boolean hardenable() {
        return carbonEquivalents.iiw().value() > HARDENABLE;
    }
}
