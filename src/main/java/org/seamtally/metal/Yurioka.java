package org.seamtally.metal;

import static org.seamtally.catalogue.Element.C;
import static org.seamtally.catalogue.Element.CR;
import static org.seamtally.catalogue.Element.CU;
import static org.seamtally.catalogue.Element.MN;
import static org.seamtally.catalogue.Element.MO;
import static org.seamtally.catalogue.Element.NB;
import static org.seamtally.catalogue.Element.NI;
import static org.seamtally.catalogue.Element.SI;
import static org.seamtally.catalogue.Element.V;

import java.util.List;
import org.seamtally.catalogue.Composition;

/**
 * Peak hardness of the heat-affected zone by analysis and cooling time: Yurioka, Okumura, Kasuya and Cotton, Metal
 * Construction 19 (1987) 217R; formulas and range from memory.
 *
 * @param fullMartensiteTime τ_M, s: the longest cooling time that leaves nothing but martensite
 * @param noMartensiteTime τ_B, s: the shortest cooling time that leaves none
 * @param martensite H_M, HV, the hardness at fast cooling
 * @param bainite H_B, HV, the hardness at slow cooling
 * @param hardness HV at the cooling time asked for
 * @param outside what lies outside the range; empty where the analysis lies within
 */
public record Yurioka(
        double fullMartensiteTime,
        double noMartensiteTime,
        double martensite,
        double bainite,
        double hardness,
        List<String> outside) {

    private static final List<Range.OfElement> RANGE = List.of(
            new Range.OfElement(C, 0, 0.8),
            new Range.OfElement(SI, 0, 1.2),
            new Range.OfElement(MN, 0, 2),
            new Range.OfElement(CU, 0, 0.9),
            new Range.OfElement(NI, 0, 10),
            new Range.OfElement(CR, 0, 10),
            new Range.OfElement(MO, 0, 2));

    /** Copies the list. */
    public Yurioka {
        outside = List.copyOf(outside);
    }

    /**
     * Computes the hardness.
     *
     * @param steel its analysis
     * @param coolingTime t₈₅, s, above 0
     * @throws IllegalArgumentException where the cooling time cannot be, or where the alloy is so high that the formula's
     *     two times are no longer in order
     */
    public static Yurioka of(Composition steel, double coolingTime) {
        Given.positive("cooling time", coolingTime);
        double c = steel.of(C);
        double cp = c <= 0.30 ? c : c / 6 + 0.25;
        double ce1 = cp
                + steel.of(SI) / 24
                + steel.of(MN) / 6
                + steel.of(CU) / 15
                + steel.of(NI) / 12
                + steel.of(CR) * (1 - 0.16 * Math.sqrt(steel.of(CR))) / 8
                + steel.of(MO) / 4;
        double ce2 = c
                + steel.of(SI) / 24
                + steel.of(MN) / 5
                + steel.of(CU) / 10
                + steel.of(NI) / 18
                + steel.of(CR) / 5
                + steel.of(MO) / 2.5
                + steel.of(V) / 5
                + steel.of(NB) / 3;
        double ce3 =
                cp + steel.of(MN) / 3.6 + steel.of(CU) / 20 + steel.of(NI) / 9 + steel.of(CR) / 5 + steel.of(MO) / 4;
        double tauM = Math.exp(10.6 * ce1 - 4.8);
        double tauB = Math.exp(6.2 * ce3 + 0.74);
        if (tauM >= tauB) {
            throw new IllegalArgumentException("the alloy is too high for the hardness formula of Yurioka et al. 1987");
        }
        double hM = 884 * c * (1 - 0.3 * c * c) + 294;
        double hB = 145 + 130 * Math.tanh(2.65 * ce2 - 0.69);
        double x = 4 * Math.log(coolingTime / tauM) / Math.log(tauB / tauM) - 2;
        double hardness = (hM + hB) / 2 - (hM - hB) / 2.2 * Math.atan(x);
        List<String> outside = Range.OfElement.outside(RANGE, steel);
        return new Yurioka(tauM, tauB, hM, hB, hardness, outside);
    }

    /**
     * Share of martensite, 0 to 1: how far the formula's own hardness has gone from H_B to H_M. That is how the paper
     * builds the formula: all martensite at τ_M, none at τ_B.
     */
    public double martensiteShare() {
        // the arc tangent reaches 1.003 at the ends: a share stops at 1
        return Math.min(1, Math.max(0, (hardness - bainite) / (martensite - bainite)));
    }
}
