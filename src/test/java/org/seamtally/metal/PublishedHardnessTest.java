package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.catalogue.Composition;

/** Maynier et al. 1978 (read second-hand) and Yurioka et al. 1987 (from memory), worked by hand from their formulas. */
class PublishedHardnessTest {

    @ParameterizedTest
    @CsvSource({
        // °C/s at 700 °C for mid-range 4130: martensite, bainite, ferrite and pearlite
        "10, 539.58, 317.18, 207.26",
        "50, 554.26, 355.49, 216.25",
        "100, 560.58, 371.99, 220.11"
    })
    void maynierOf4130(double perSecond, double martensite, double bainite, double ferritePearlite) {
        Maynier found = Maynier.atRate(Analyses.MID_4130, 3600 * perSecond);
        assertEquals(martensite, found.martensite(), 0.005);
        assertEquals(bainite, found.bainite(), 0.005);
        assertEquals(ferritePearlite, found.ferritePearlite(), 0.005);
    }

    /** With nickel and vanadium too, at 30 °C/s. */
    @Test
    void maynierWithNickelAndVanadium() {
        Maynier found = Maynier.of(Analyses.of("C 0.2 Si 0.3 Mn 1 Ni 1.5 Cr 0.5 Mo 0.2 V 0.1"), 10);
        assertEquals(461.6019, found.martensite(), 1e-4);
        assertEquals(322.1860, found.bainite(), 1e-4);
        assertEquals(296.1125, found.ferritePearlite(), 1e-4);
    }

    @ParameterizedTest
    @CsvSource({
        "C 0.1, C 0.0999",
        "C 0.5, C 0.5001",
        "C 0.2 Si 1, C 0.2 Si 1.001",
        "C 0.2 Mn 2, C 0.2 Mn 2.001",
        "C 0.2 Ni 4, C 0.2 Ni 4.001",
        "C 0.2 Cr 3, C 0.2 Cr 3.001",
        "C 0.2 Mo 1, C 0.2 Mo 1.001",
        "C 0.2 V 0.2, C 0.2 V 0.2001"
    })
    void rangeOfMaynier(String inside, String outside) {
        assertTrue(Maynier.of(Analyses.of(inside), 10).outside().isEmpty());
        assertEquals(1, Maynier.of(Analyses.of(outside), 10).outside().size());
    }

    /** Mid-range 4130: τ_M 2.65 s, τ_B 141.8 s, 430 HV at 16 s. */
    @Test
    void yuriokaOf4130() {
        Yurioka found = Yurioka.of(Analyses.MID_4130, 16);
        assertEquals(2.65125, found.fullMartensiteTime(), 1e-5);
        assertEquals(141.7802, found.noMartensiteTime(), 1e-4);
        assertEquals(556.0956, found.martensite(), 1e-4);
        assertEquals(250.2698, found.bainite(), 1e-4);
        assertEquals(429.6953, found.hardness(), 1e-4);
        assertEquals(0.586692, found.martensiteShare(), 1e-6);
        assertTrue(found.outside().isEmpty());
    }

    /** Every element that the formula counts, at 8 s. */
    @Test
    void yuriokaWithEveryElement() {
        Yurioka found = Yurioka.of(Analyses.of("C 0.15 Si 0.3 Mn 1.2 Cu 0.3 Ni 0.9 Cr 0.4 Mo 0.15 V 0.06 Nb 0.03"), 8);
        assertEquals(2.517755, found.fullMartensiteTime(), 1e-6);
        assertEquals(177.35736, found.noMartensiteTime(), 1e-5);
        assertEquals(425.70495, found.martensite(), 1e-5);
        assertEquals(244.97260, found.bainite(), 1e-5);
        assertEquals(396.13362, found.hardness(), 1e-5);
    }

    /** C_p is carbon itself up to 0.30 %, C/6 + 0.25 above: the two meet there. */
    @Test
    void carbonOfThirtyPoints() {
        Yurioka found = Yurioka.of(Analyses.of("C 0.30"), 16);
        assertEquals(0.1978987, found.fullMartensiteTime(), 1e-7);
        assertEquals(13.463738, found.noMartensiteTime(), 1e-6);
        assertEquals(151.83149, found.hardness(), 1e-5);
    }

    /** The short form 884C + 294 is the formula's limit for little carbon: 0.1 % apart at 0.05 % C. */
    @Test
    void shortFormForLittleCarbon() {
        assertEquals(884 * 0.05 + 294, Yurioka.of(Analyses.of("C 0.05"), 1).martensite(), 0.05);
    }

    /** All martensite at τ_M, none at τ_B, half in the geometric middle; a share outside them stays within 0 and 1. */
    @Test
    void martensiteShareAtTheTimesThatBoundIt() {
        Yurioka any = Yurioka.of(Analyses.MID_4130, 1);
        double tauM = any.fullMartensiteTime();
        double tauB = any.noMartensiteTime();
        assertEquals(1, any.martensiteShare());
        assertEquals(1, Yurioka.of(Analyses.MID_4130, tauM).martensiteShare(), 0.005);
        assertEquals(0.5, Yurioka.of(Analyses.MID_4130, Math.sqrt(tauM * tauB)).martensiteShare(), 1e-12);
        assertEquals(0, Yurioka.of(Analyses.MID_4130, tauB).martensiteShare(), 0.005);
        assertEquals(0, Yurioka.of(Analyses.MID_4130, 1000).martensiteShare());
    }

    @ParameterizedTest
    @CsvSource({
        "C 0.8, C 0.8001",
        "C 0.2 Si 1.2, C 0.2 Si 1.2001",
        "C 0.2 Mn 2, C 0.2 Mn 2.001",
        "C 0.2 Cu 0.9, C 0.2 Cu 0.9001",
        "C 0.2 Ni 10, C 0.2 Ni 10.001",
        "C 0.2 Cr 10, C 0.2 Cr 10.001",
        "C 0.2 Mo 2, C 0.2 Mo 2.001"
    })
    void rangeOfYurioka(String inside, String outside) {
        assertTrue(Yurioka.of(Analyses.of(inside), 10).outside().isEmpty());
        assertEquals(1, Yurioka.of(Analyses.of(outside), 10).outside().size());
    }

    @Test
    void anAlloyTooHighForTheFormulaIsRefused() {
        Composition steel = Analyses.of("C 0.2 Mo 6");
        assertThrows(IllegalArgumentException.class, () -> Yurioka.of(steel, 10));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void aCoolingTimeThatCannotBeIsRefused(double time) {
        assertThrows(IllegalArgumentException.class, () -> Maynier.of(Analyses.MID_4130, time));
        assertThrows(IllegalArgumentException.class, () -> Yurioka.of(Analyses.MID_4130, time));
    }

    /** By hand at 16 s: V_r 67 500 °C/h, martensite and bainite of Maynier mixed 0.586692 to 0.413308. */
    @Test
    void bothSideBySide() {
        Hardness found = Hardness.of(Analyses.MID_4130, 16);
        double martensite = 127 + 949 * 0.305 + 27 * 0.25 + 11 * 0.5 + 16 * 0.95 + 21 * 4.829304;
        assertEquals(martensite, found.maynier().martensite(), 1e-4);
        // bainite: −36.495… from the analysis and 39.815 for each decade of the rate
        double bainite = 89 + 53 * 0.305 - 55 * 0.25 - 22 * 0.5 - 20 * 0.95 - 33 * 0.2;
        bainite = -323 + 185 * 0.305 + 330 * 0.25 + 153 * 0.5 + 144 * 0.95 + 191 * 0.2 + bainite * 4.829304;
        assertEquals(0.586692 * martensite + 0.413308 * bainite, found.byMaynier(), 1e-3);
        assertEquals(429.6953, found.byYurioka(), 1e-4);
        assertEquals(found.byYurioka(), found.least());
        assertEquals(found.byMaynier(), found.greatest());
        assertEquals(found.byMaynier() - found.byYurioka(), found.spread(), 1e-12);
        assertEquals(0.586692, found.martensiteShare(), 1e-6);
        assertTrue(found.outside().isEmpty());
    }

    @Test
    void whatLiesOutsideIsNamedByItsFormula() {
        Hardness found = Hardness.of(Analyses.of("C 0.05 Si 1.3 Mn 0.5"), 16);
        assertEquals(3, found.outside().size());
        assertTrue(found.outside().get(0).startsWith("Maynier et al.: C 0.05 %"));
        assertTrue(found.outside().get(2).startsWith("Yurioka et al.: Si 1.3 %"));
    }

    /** Slower cooling is never harder, and neither is less carbon at the same time. */
    @Test
    void slowerCoolingIsSofter() {
        long seed = 1987;
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            Composition steel = Analyses.of("C " + (0.1 + 0.3 * random.nextDouble()) + " Mn " + 2 * random.nextDouble()
                    + " Cr " + random.nextDouble() + " Mo " + 0.5 * random.nextDouble());
            double time = 1 + 100 * random.nextDouble();
            Hardness fast = Hardness.of(steel, time);
            Hardness slow = Hardness.of(steel, time * 1.5);
            String which = "seed " + seed + ", " + steel + ", " + time + " s";
            assertTrue(slow.byYurioka() < fast.byYurioka(), which);
            assertTrue(slow.byYurioka() > 100, which);
            assertTrue(slow.maynier().martensite() < fast.maynier().martensite(), which);
        }
    }
}
