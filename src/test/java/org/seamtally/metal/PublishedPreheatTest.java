package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.metal.HydrogenControl.Group;
import org.seamtally.metal.HydrogenControl.Level;
import org.seamtally.quantity.UnitSystem;

/** EN 1011-2:2001 annex C.3 and AWS D1.1's hydrogen control, both from memory. */
class PublishedPreheatTest {

    @ParameterizedTest
    @CsvSource({
        // CET, d mm, HD mL/100 g, Q kJ/mm; T_p °C; its four parts, worked by hand from the annex
        "0.30, 20, 5, 1.0, 56.526, 75.000, -27.375, 8.901, 0.000",
        "0.33, 30, 5, 1.5, 100.311, 97.500, 1.165, 8.901, -7.255",
        "0.40, 50, 4, 2.0, 172.539, 150.000, 32.620, 0.719, -10.800",
        "0.4175, 10, 3, 0.5, 93.643, 163.125, -65.490, -8.928, 4.936",
        "0.50, 90, 20, 4, 333.552, 225.000, 48.142, 76.910, -16.500",
        "0.20, 10, 1, 0.5, -92.790, 0, -65.490, -38.000, 10.700"
    })
    void methodB(
            double cet,
            double d,
            double hd,
            double q,
            double sum,
            double steel,
            double thickness,
            double hydrogen,
            double heat) {
        EnMethodB found = EnMethodB.of(cet, false, d, hd, q, List.of());
        assertEquals(sum, found.sum(), 1e-3);
        assertEquals(steel, found.steelPart(), 1e-3);
        assertEquals(thickness, found.thicknessPart(), 1e-3);
        assertEquals(hydrogen, found.hydrogenPart(), 1e-3);
        assertEquals(heat, found.heatPart(), 1e-3);
        // equation C.8 in one piece
        double whole = 697 * cet + 160 * Math.tanh(d / 35) + 62 * Math.pow(hd, 0.35) + (53 * cet - 32) * q - 328;
        assertEquals(whole, found.sum(), 1e-9);
        assertTrue(found.insideRange());
        assertEquals(sum > 20, found.leastTemperature().isPresent());
    }

    @ParameterizedTest
    @CsvSource({
        "0.1999, 20, 5, 1, CET",
        "0.5001, 20, 5, 1, CET",
        "0.3, 9.99, 5, 1, thickness",
        "0.3, 90.01, 5, 1, thickness",
        "0.3, 20, 0.99, 1, hydrogen",
        "0.3, 20, 20.01, 1, hydrogen",
        "0.3, 20, 5, 0.499, heat input",
        "0.3, 20, 5, 4.001, heat input"
    })
    void rangeOfMethodB(double cet, double d, double hd, double q, String what) {
        EnMethodB found = EnMethodB.of(cet, false, d, hd, q, List.of());
        assertEquals(1, found.outside().size());
        assertTrue(found.outside().get(0).in(UnitSystem.SI).startsWith(what));
        assertFalse(found.insideRange());
    }

    /** By hand: 0.4225 of the tube governs over 0.24225 + 0.03; 0.095 in, 3 mL/100 g, 0.350787 kJ/mm give 65.2 °C. */
    @Test
    void thinTubeIsAnExtrapolation() {
        EnMethodB found = EnMethodB.of(
                CarbonEquivalents.of(Analyses.MID_4130),
                CarbonEquivalents.of(Dilution.mix(Analyses.MID_4130, Analyses.ER70S_2, 0.3)),
                Tubes.thin(Restraint.MEDIUM));
        assertEquals(0.4225, found.cet(), 1e-12);
        assertFalse(found.fromWeldMetal());
        assertEquals(65.1976, found.sum(), 1e-4);
        assertEquals(65.1976 + 273.15, found.leastTemperature().getAsDouble(), 1e-4);
        assertEquals(2, found.outside().size());
        assertTrue(found.outside().get(0).in(UnitSystem.SI).startsWith("thickness 2.413 mm is outside 10 mm to 90 mm"));
        assertTrue(found.outside().get(1).in(UnitSystem.SI).startsWith("heat input 0.350787 kJ/mm"));
    }

    /** C.3.2.2: the weld metal's CET, raised by 0.03, governs where the base metal's is not so far above it. */
    @Test
    void strongWeldMetalGoverns() {
        EnMethodB found = EnMethodB.of(
                CarbonEquivalents.of(Analyses.of("C 0.18 Mn 0.75")),
                CarbonEquivalents.of(Analyses.of("C 0.20 Mn 0.60")),
                Tubes.thin(Restraint.MEDIUM));
        assertTrue(found.fromWeldMetal());
        assertEquals(0.29, found.cet(), 1e-12);
        EnMethodB further = EnMethodB.of(
                CarbonEquivalents.of(Analyses.of("C 0.2501 Mn 0.5")),
                CarbonEquivalents.of(Analyses.of("C 0.21 Mn 0.6")),
                Tubes.thin(Restraint.MEDIUM));
        assertFalse(further.fromWeldMetal());
        assertEquals(0.3001, further.cet(), 1e-12);
        EnMethodB nearer = EnMethodB.of(
                CarbonEquivalents.of(Analyses.of("C 0.2499 Mn 0.5")),
                CarbonEquivalents.of(Analyses.of("C 0.21 Mn 0.6")),
                Tubes.thin(Restraint.MEDIUM));
        assertTrue(nearer.fromWeldMetal());
        assertEquals(0.30, nearer.cet(), 1e-12);
    }

    /** What lies outside the range of CET itself is said too, of the metal whose CET governs. */
    @Test
    void theRangeOfCetIsSaidToo() {
        EnMethodB found = EnMethodB.of(
                CarbonEquivalents.of(Analyses.of("C 0.34 Mn 0.5")),
                CarbonEquivalents.of(Analyses.of("C 0.04 Mn 0.5")),
                Tubes.thin(Restraint.MEDIUM));
        assertEquals(
                "C 0.34 % is outside 0.05 to 0.32 %", found.outside().get(0).in(UnitSystem.SI));
        EnMethodB weld = EnMethodB.of(
                CarbonEquivalents.of(Analyses.of("C 0.04 Mn 0.5")),
                CarbonEquivalents.of(Analyses.of("C 0.33 Mn 0.5")),
                Tubes.thin(Restraint.MEDIUM));
        assertEquals("C 0.33 % is outside 0.05 to 0.32 %", weld.outside().get(0).in(UnitSystem.SI));
    }

    /**
     * A user's example in the society's own forum, after annex XI of the 2004 edition: composition index below 0.28 and
     * hydrogen level H2 fall into group D, and 2 in at high restraint asks for 300 °F.
     */
    @Test
    void hydrogenControlInGroupD() {
        // Pcm = 0.2795
        HydrogenControl found = HydrogenControl.of(
                CarbonEquivalents.of(Analyses.of("C 0.2295 Mn 1.00")), Tubes.of(2 * 0.0254, 9, Restraint.HIGH));
        assertEquals(Level.H2, found.level());
        assertEquals(12 * 0.2795 + 1, found.index(), 1e-12);
        assertEquals(Group.D, found.group());
        assertEquals(300, found.fahrenheit());
        assertEquals(148.8889 + 273.15, found.leastTemperature().getAsDouble(), 1e-4);
        assertTrue(found.insideRange());
    }

    /** H1 below 5, H2 below 10 mL/100 g, else H3; the code takes 5, 10 and 30 for them. */
    @ParameterizedTest
    @CsvSource({"4.999, H1, 5", "5, H2, 10", "9.999, H2, 10", "10, H3, 30", "25, H3, 30"})
    void hydrogenLevels(double hydrogen, Level level, double taken) {
        HydrogenControl found =
                HydrogenControl.of(CarbonEquivalents.of(Analyses.of("C 0.2")), Tubes.of(5e-3, hydrogen, Restraint.LOW));
        assertEquals(level, found.level());
        assertEquals(2.4 + Math.log10(taken), found.index(), 1e-12);
    }

    /** Printed groups: A to 3.0, B 3.1 to 3.5, C 3.6 to 4.0, D 4.1 to 4.5, E 4.6 to 5.0, F 5.1 to 5.5, G 5.6 to 7.0. */
    @ParameterizedTest
    @CsvSource({
        "3.0, A",
        "3.001, B",
        "3.1, B",
        "3.5, B",
        "3.6, C",
        "4.0, C",
        "4.1, D",
        "4.5, D",
        "4.6, E",
        "5.0, E",
        "5.1, F",
        "5.5, F",
        "5.6, G",
        "7.0, G",
        "9.0, G"
    })
    void groups(double index, Group group) {
        assertEquals(group, Group.of(index));
    }

    /** Under 3/8 in, groups A to G, °F; 0 stands for "below 65". */
    @ParameterizedTest
    @CsvSource({
        "LOW, 0, 0, 0, 0, 140, 280, 300",
        "MEDIUM, 0, 0, 0, 0, 160, 280, 320",
        "HIGH, 0, 0, 0, 100, 230, 300, 320"
    })
    void underThreeEighths(Restraint restraint, int a, int b, int c, int d, int e, int f, int g) {
        int[] printed = {a, b, c, d, e, f, g};
        for (int i = 0; i < 7; i++) {
            // a plain carbon steel in the middle of the group at level H1
            double carbon = (2.75 + 0.5 * i - Math.log10(5)) / 12;
            HydrogenControl found = HydrogenControl.of(
                    CarbonEquivalents.of(Analyses.of("C " + carbon)), Tubes.of(9.5e-3, 3, restraint));
            assertEquals(Group.values()[i], found.group());
            assertEquals(printed[i], found.fahrenheit(), "group " + found.group());
            assertEquals(
                    printed[i] == 0 ? OptionalDouble.empty() : OptionalDouble.of((printed[i] - 32) / 1.8 + 273.15),
                    found.leastTemperature());
        }
    }

    /** The thickness classes of the table at their ends, high restraint, group C: "below 65", 150, 240, 300, 300 °F. */
    @ParameterizedTest
    @CsvSource({"0.374, 0", "0.375, 150", "0.75, 150", "0.751, 240", "1.5, 240", "1.501, 300", "3, 300", "3.001, 300"})
    void thicknessClasses(double inches, int fahrenheit) {
        HydrogenControl found = HydrogenControl.of(
                CarbonEquivalents.of(Analyses.of("C 0.26")), Tubes.of(inches * 0.0254, 3, Restraint.HIGH));
        assertEquals(Group.C, found.group());
        assertEquals(fahrenheit, found.fahrenheit());
    }

    /** Over 3 in differs from over 1-1/2 in at medium restraint, group A: 200 against 65 °F; 65 °F is no preheat. */
    @Test
    void theThickestClass() {
        HydrogenControl thick = HydrogenControl.of(
                CarbonEquivalents.of(Analyses.of("C 0.1")), Tubes.of(3.1 * 0.0254, 3, Restraint.MEDIUM));
        assertEquals(200, thick.fahrenheit());
        HydrogenControl less = HydrogenControl.of(
                CarbonEquivalents.of(Analyses.of("C 0.1")), Tubes.of(3 * 0.0254, 3, Restraint.MEDIUM));
        assertEquals(65, less.fahrenheit());
        assertTrue(less.leastTemperature().isEmpty());
    }

    /** In every row more hydrogen or carbon never asks for less, nor does more restraint. */
    @Test
    void theTableNeverFalls() {
        for (double inches : new double[] {0.2, 0.5, 1, 2, 4}) {
            int before = -1;
            for (int i = 0; i < 7; i++) {
                String steel = "C " + (2.75 + 0.5 * i - Math.log10(5)) / 12;
                int atRestraint = -1;
                for (Restraint restraint : Restraint.values()) {
                    int found = HydrogenControl.of(
                                    CarbonEquivalents.of(Analyses.of(steel)), Tubes.of(inches * 0.0254, 3, restraint))
                            .fahrenheit();
                    assertTrue(found >= atRestraint, inches + " in, " + steel + ", " + restraint);
                    atRestraint = found;
                }
                assertTrue(atRestraint >= before, inches + " in, " + steel);
                before = atRestraint;
            }
        }
    }

    /** The code's tubular scope leaves out walls under 1/8 in (3.2 mm); index 7.0 ends its last group. */
    @Test
    void rangeOfHydrogenControl() {
        assertEquals(
                "wall 3.2 mm is not above 3.2 mm",
                HydrogenControl.of(CarbonEquivalents.of(Analyses.of("C 0.2")), Tubes.of(3.2e-3, 3, Restraint.LOW))
                        .outside()
                        .get(0)
                        .in(UnitSystem.SI));
        assertTrue(HydrogenControl.of(CarbonEquivalents.of(Analyses.of("C 0.2")), Tubes.of(3.201e-3, 3, Restraint.LOW))
                .insideRange());
        // 12·0.525 + log 5 = 6.999, 12·0.5252 + log 5 = 7.001
        assertTrue(HydrogenControl.of(CarbonEquivalents.of(Analyses.of("C 0.525")), Tubes.of(5e-3, 3, Restraint.LOW))
                .insideRange());
        assertEquals(
                "index 7.00 is above 7.0",
                HydrogenControl.of(CarbonEquivalents.of(Analyses.of("C 0.5252")), Tubes.of(5e-3, 3, Restraint.LOW))
                        .outside()
                        .get(0)
                        .in(UnitSystem.SI));
    }

    /** Mid-range 4130 at level H1: 12 × 0.399167 + log 5 = 5.489, group F. */
    @Test
    void hydrogenControlOf4130() {
        HydrogenControl found =
                HydrogenControl.of(CarbonEquivalents.of(Analyses.MID_4130), Tubes.thin(Restraint.MEDIUM));
        assertEquals(5.48897, found.index(), 1e-5);
        assertEquals(Group.F, found.group());
        assertEquals(280, found.fahrenheit());
        assertFalse(found.insideRange());
    }
}
