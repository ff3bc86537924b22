package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;

/** ASTM A255-10(2014), read in a public second-hand copy. */
class PublishedIdealDiameterTest {

    private static final double INCH = 0.0254;

    /**
     * The standard's worked example, SAE 4118 modified: it prints the factors .119, 3.667, 1.126, 1.036, 1.929, 1.75, 1.04,
     * 1.09 and 1.95 in; without rounding each factor the product is 1.932 in.
     */
    @Test
    void workedExampleOfTheStandard() {
        IdealDiameter found =
                IdealDiameter.of(Analyses.of("C 0.22 Mn 0.80 Si 0.18 Ni 0.10 Cr 0.43 Mo 0.25 Cu 0.10 V 0.05"));
        assertEquals(1.95, found.diameter() / INCH, 0.0195);
        assertEquals(1.9321, found.diameter() / INCH, 5e-5);
        double[] printed = {0.119, 3.667, 1.126, 1.036, 1.929, 1.75, 1.04, 1.09, 1};
        Element[] order = {
            Element.C, Element.MN, Element.SI, Element.NI, Element.CR, Element.MO, Element.CU, Element.V, Element.ZR
        };
        assertEquals(printed.length, found.factors().size());
        for (int i = 0; i < printed.length; i++) {
            assertEquals(order[i], found.factors().get(i).element());
            assertEquals(printed[i], found.factors().get(i).value(), 0.004, order[i].symbol());
        }
        assertTrue(found.insideRange());
    }

    /** Hand-derived: .1647 × 2.66665 × 1.175 × 3.052 × 1.6 in. */
    @Test
    void midRange4130() {
        assertEquals(2.52001, IdealDiameter.of(Analyses.MID_4130).diameter() / INCH, 1e-5);
    }

    /** Each piece of each factor at a point by hand; the other factors are 1, carbon's stands alone. */
    @ParameterizedTest
    @CsvSource({
        // the printed pieces of the carbon base: .54C; .171+.001C+.265C²; .115+.268C−.038C²; .143+.2C;
        // .062+.409C−.135C²
        "C 0.39, 0.2106",
        "C 0.40, 0.2138",
        "C 0.55, 0.2517125",
        "C 0.60, 0.26212",
        "C 0.65, 0.273145",
        "C 0.70, 0.283",
        "C 0.75, 0.293",
        "C 0.80, 0.3028",
        "C 0.90, 0.32075",
        // 3.3333 Mn + 1 to 1.20, 5.10 Mn − 1.12 above
        "C 0.10 Mn 1.20, 0.26999784",
        "C 0.10 Mn 1.21, 0.272754",
        "C 0.10 Mn 1.95, 0.47655",
        // .363 Ni + 1 to 1.5, the cubic above
        "C 0.10 Ni 1.5, 0.083403",
        "C 0.10 Ni 2.0, 0.0959094",
        "C 0.10 Zr 0.1, 0.0675"
    })
    void eachPieceOfEachFactor(String analysis, double inches) {
        assertEquals(inches, IdealDiameter.of(Analyses.of(analysis)).diameter() / INCH, 1e-7);
    }

    /** The scope printed in ASTM A255: C .10–.70, Mn .50–1.65, Si .15–.60, Ni to 1.50, Cr to 1.35, Mo to .55. */
    @ParameterizedTest
    @CsvSource({
        "C 0.10 Mn 0.50 Si 0.15, C 0.0999 Mn 0.50 Si 0.15",
        "C 0.70 Mn 0.50 Si 0.15, C 0.7001 Mn 0.50 Si 0.15",
        "C 0.20 Mn 0.50 Si 0.15, C 0.20 Mn 0.4999 Si 0.15",
        "C 0.20 Mn 1.65 Si 0.15, C 0.20 Mn 1.6501 Si 0.15",
        "C 0.20 Mn 0.50 Si 0.15, C 0.20 Mn 0.50 Si 0.1499",
        "C 0.20 Mn 0.50 Si 0.60, C 0.20 Mn 0.50 Si 0.6001",
        "C 0.20 Mn 0.50 Si 0.15 Ni 1.5, C 0.20 Mn 0.50 Si 0.15 Ni 1.5001",
        "C 0.20 Mn 0.50 Si 0.15 Cr 1.35, C 0.20 Mn 0.50 Si 0.15 Cr 1.3501",
        "C 0.20 Mn 0.50 Si 0.15 Mo 0.55, C 0.20 Mn 0.50 Si 0.15 Mo 0.5501",
        "C 0.20 Mn 0.50 Si 0.15 B 0.0004, C 0.20 Mn 0.50 Si 0.15 B 0.0005"
    })
    void rangeOfTheStandard(String inside, String outside) {
        assertTrue(IdealDiameter.of(Analyses.of(inside)).insideRange());
        IdealDiameter found = IdealDiameter.of(Analyses.of(outside));
        assertFalse(found.insideRange());
        assertEquals(1, found.outside().size());
    }

    /** SAE 1020 with 0.45 % manganese lies outside the standard's range, which starts at 0.50 %. */
    @Test
    void lowManganese1020IsSaidToLieOutside() {
        IdealDiameter found = IdealDiameter.of(Analyses.of("C 0.20 Mn 0.45 Si 0.20"));
        assertEquals("Mn 0.45 % is outside 0.5 to 1.65 %", found.outside().get(0));
    }

    /**
     * Common practice, no source: the diluted deposit of the low-carbon rod hardens less than the 4130 tube, that of the
     * manganese-molybdenum rod more than that deposit, and at 30 % dilution more than the tube itself.
     */
    @Test
    void theOrderOfTheTrade() {
        for (double dilution : new double[] {0.30, 0.35}) {
            double tube = IdealDiameter.of(Analyses.MID_4130).diameter();
            double mild = deposit(Analyses.ER70S_2, dilution);
            double strong = deposit(Analyses.ER80S_D2, dilution);
            assertTrue(mild < tube / 2);
            assertTrue(strong > tube);
        }
        // by hand: .1545·.54 × (5.10·1.445 − 1.12) × 1.371 × 1.6156 × 2.23
        assertEquals(2.5754, deposit(Analyses.ER80S_D2, 0.30) / INCH, 1e-4);
        assertEquals(0.72020, deposit(Analyses.ER70S_2, 0.30) / INCH, 1e-5);
        assertTrue(Analyses.ER80S_D2.of(Element.MO) > 2 * Analyses.MID_4130.of(Element.MO));
    }

    private static double deposit(Composition rod, double dilution) {
        return IdealDiameter.of(Dilution.mix(Analyses.MID_4130, rod, dilution)).diameter();
    }
}
