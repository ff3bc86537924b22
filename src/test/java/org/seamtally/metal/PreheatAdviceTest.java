package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.catalogue.Fillers;
import org.seamtally.catalogue.HeatTreatment;
import org.seamtally.catalogue.Steels;
import org.seamtally.metal.PreheatAdvice.Governing;
import org.seamtally.quantity.UnitSystem;

/** Which method governs, and what the practice of the trade says where neither is meant. */
class PreheatAdviceTest {

    private static BaseMetal steel(String name) {
        return BaseMetal.of(Steels.find(name).orElseThrow());
    }

    private static Rod rod(String classification) {
        return Rod.of(Fillers.find(classification).orElseThrow());
    }

    private static PreheatAdvice advise(String steel, String filler, WeldingConditions conditions) {
        return PreheatAdvice.of(steel(steel), rod(filler), conditions);
    }

    /** Common practice, no source: thin normalized 4130 with the low-carbon rod is welded cold, dry and at least 16 °C. */
    @Test
    void thinNormalizedTubeWithTheLowCarbonRodIsWeldedCold() {
        PreheatAdvice found = advise("4130", "ER70S-2", Tubes.thin(Restraint.MEDIUM));
        assertEquals(OptionalDouble.empty(), found.advised());
        assertEquals(Governing.COMMON_PRACTICE, found.governing());
        assertTrue(found.why().in(UnitSystem.SI).startsWith("No preheat: thin wall"));
        assertTrue(found.after().isEmpty());
        assertFalse(found.en().insideRange());
        assertFalse(found.hydrogenControl().insideRange());
        assertEquals(List.of(found.en(), found.hydrogenControl()), found.methods());
        assertEquals("EN 1011-2:2001 method B", found.methods().get(0).name());
        assertEquals("AWS D1.1 hydrogen control", found.methods().get(1).name());
        assertEquals(16 + 273.15, PreheatAdvice.LEAST_METAL_TEMPERATURE, 1e-9);
    }

    /** Common practice, no source: each of the four takes a 4130 joint out of that, and asks for at least 150 °C. */
    @ParameterizedTest
    @CsvSource({
        "4130, ER80S-D2, 2.413, 3, filler not of the 70 ksi class",
        "4130 HT-125, ER70S-2, 2.413, 3, quenched-and-tempered tube",
        "4130, ER70S-2, 3.201, 3, wall above 3.2 mm",
        "4130, AMS 6457, 2.413, 3, filler not of the 70 ksi class"
    })
    void eachStepOutOfThatAsksForPreheat(String steel, String filler, double wall, double hydrogen, String due) {
        PreheatAdvice found = advise(steel, filler, Tubes.of(wall * 1e-3, hydrogen, Restraint.MEDIUM));
        assertEquals(423.15, found.advised().getAsDouble(), 1e-9);
        assertEquals(Governing.COMMON_PRACTICE, found.governing());
        assertTrue(
                found.why().in(UnitSystem.SI).endsWith("Due because of: " + due + "."),
                found.why().in(UnitSystem.SI));
    }

    @Test
    void theEndsOfThePracticeItself() {
        assertTrue(advise("4130", "ER70S-2", Tubes.of(3.2e-3, 5, Restraint.LOW))
                .advised()
                .isEmpty());
        PreheatAdvice found = advise("4130", "ER70S-2", Tubes.of(3.2e-3, 5.01, Restraint.LOW));
        assertTrue(
                found.why().in(UnitSystem.SI).endsWith("Due because of: hydrogen above 5 mL/100 g."),
                found.why().in(UnitSystem.SI));
    }

    /** 300 °F of AWS D1.1 (group G at 1/4 in) is 148.9 °C: under 150. At medium restraint, 320 °F, it governs. */
    @Test
    void hydrogenControlGovernsWhereItAsksForMore() {
        PreheatAdvice low = advise("4130", "ER70S-2", Tubes.of(6.35e-3, 6, Restraint.LOW));
        assertEquals(Governing.COMMON_PRACTICE, low.governing());
        PreheatAdvice medium = advise("4130", "ER70S-2", Tubes.of(6.35e-3, 6, Restraint.MEDIUM));
        assertEquals(Governing.AWS_D1_1_HYDROGEN_CONTROL, medium.governing());
        assertEquals(160 + 273.15, medium.advised().getAsDouble(), 1e-9);
        assertTrue(
                medium.why().in(UnitSystem.SI).startsWith("Preheat to 160 °C"),
                medium.why().in(UnitSystem.SI));
        assertTrue(
                medium.why().in(UnitSystem.SI).contains("AWS D1.1 hydrogen control (160 °C)"),
                medium.why().in(UnitSystem.SI));
        assertTrue(
                medium.why().in(UnitSystem.SI).contains("outside its range), AWS"),
                medium.why().in(UnitSystem.SI));
        assertTrue(
                medium.why().in(UnitSystem.SI).contains("hardenable steel (150 °C)"),
                medium.why().in(UnitSystem.SI));
    }

    /** By hand for 4130, 25 mm, 10 mL/100 g, 0.35 kJ/mm: 697·0.4225 + 160·tanh(25/35) + 62·10^0.35 − 9.6070·0.350787 − 328. */
    @Test
    void methodBGovernsInThickHeavilyHydrogenatedMetal() {
        PreheatAdvice found = advise("4130", "ER80S-D2", Tubes.of(25e-3, 10, Restraint.LOW));
        double byHand = 697 * 0.4225
                + 160 * Math.tanh(25.0 / 35)
                + 62 * Math.pow(10, 0.35)
                + (53 * 0.4225 - 32) * Tubes.ARC_ENERGY * 0.6e-6
                - 328;
        assertEquals(Governing.EN_1011_2_METHOD_B, found.governing());
        assertEquals(byHand + 273.15, found.advised().getAsDouble(), 1e-6);
    }

    /** Common practice, no source: carbon steel of CE(IIW) to 0.45 % gets no least preheat, whatever the filler. */
    @Test
    void lowCarbonTubeStaysColdWithTheStrongerFiller() {
        PreheatAdvice found = advise("1020", "ER80S-D2", Tubes.thin(Restraint.MEDIUM));
        assertTrue(found.advised().isEmpty());
        assertEquals(Governing.COMMON_PRACTICE, found.governing());
        assertTrue(found.why().in(UnitSystem.SI).startsWith("No preheat: neither method"));
        assertTrue(found.after().isEmpty());
    }

    /** A steel that is not hardenable can still be asked a preheat by a method alone. */
    @Test
    void aMethodAloneCanAskForPreheat() {
        PreheatAdvice found = advise("S355J2H", "ER70S-6", Tubes.of(25e-3, 9, Restraint.HIGH));
        assertEquals(Governing.AWS_D1_1_HYDROGEN_CONTROL, found.governing());
        assertTrue(
                found.why().in(UnitSystem.SI).contains("hardenable steel (none: CE(IIW) is not above 0.45 %)"),
                found.why().in(UnitSystem.SI));
        assertEquals(found.hydrogenControl().leastTemperature(), found.advised());
    }

    @Test
    void hardenableMeansAboveFortyFiveHundredths() {
        assertFalse(Analysed.of(Analyses.of("C 0.45")).hardenable());
        assertTrue(Analysed.of(Analyses.of("C 0.4501")).hardenable());
    }

    /** By hand: from 150 °C, t₈₅ 29.998 s instead of 16.090 s, and the zone is softer. */
    @Test
    void preheatSlowsTheCoolingAndSoftensTheZone() {
        PreheatAdvice found = advise("4130", "ER80S-D2", Tubes.thin(Restraint.MEDIUM));
        PreheatAdvice.After after = found.after().orElseThrow();
        assertEquals(29.99812, after.cooling().time(), 1e-5);
        assertEquals(
                Yurioka.of(Analyses.MID_4130, 29.99811514).hardness(),
                after.hardness().byYurioka(),
                1e-5);
        assertTrue(after.hardness().greatest()
                < Hardness.of(Analyses.MID_4130, 16.09).greatest());
    }

    /** Metal that is hotter already is not cooled down to the preheat. */
    @Test
    void aHotterStartIsKept() {
        WeldingConditions hot =
                new WeldingConditions(2.413e-3, 0.3, Tubes.ARC_ENERGY, 3, 473.15, Restraint.LOW, SeamShape.FILLET);
        PreheatAdvice found = advise("4130", "ER80S-D2", hot);
        assertEquals(
                CoolingTime.of(Tubes.ARC_ENERGY, 473.15, 2.413e-3, SeamShape.FILLET),
                found.after().orElseThrow().cooling());
    }

    /** A preheat that method B extrapolates beyond 500 °C leaves no cooling to be spoken of. */
    @Test
    void aPreheatBeyondTheSpanHasNoCooling() {
        BaseMetal base = new BaseMetal(
                "own", Analyses.of("C 0.8 Mn 2"), OptionalDouble.empty(), HeatTreatment.AS_ROLLED, Optional.empty());
        PreheatAdvice found = PreheatAdvice.of(base, rod("ER70S-2"), Tubes.of(60e-3, 20, Restraint.HIGH));
        assertTrue(found.advised().getAsDouble() > 773.15);
        assertTrue(found.after().isEmpty());
    }

    /** The older print of AWS A5.18 asks for 72 ksi of the same class (from memory); 75 ksi is another one. */
    @Test
    void theSeventyKsiClass() {
        assertTrue(own(72 * 6.894757e6).ofSeventyKsiClass());
        assertFalse(own(75 * 6.894757e6).ofSeventyKsiClass());
        assertTrue(own(496.5e6).ofSeventyKsiClass());
        assertFalse(rod("AMS 6457").ofSeventyKsiClass());
        assertFalse(rod("ER70S-B2L").ofSeventyKsiClass());
        assertTrue(rod("ER70S-6").ofSeventyKsiClass());
    }

    private static Rod own(double strength) {
        return new Rod("own", Analyses.ER70S_2, OptionalDouble.of(strength), true);
    }

    @Test
    void strengthsThatCannotBeAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> own(0));
        assertThrows(
                IllegalArgumentException.class,
                () -> new BaseMetal(
                        "own", Analyses.MID_4130, OptionalDouble.of(-1), HeatTreatment.AS_ROLLED, Optional.empty()));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0.3, 5e5, 3, 293.15",
        "0.002, -0.01, 5e5, 3, 293.15",
        "0.002, 1.01, 5e5, 3, 293.15",
        "0.002, 0.3, 0, 3, 293.15",
        "0.002, 0.3, 5e5, 0, 293.15",
        "0.002, 0.3, 5e5, 100.1, 293.15",
        "0.002, 0.3, 5e5, 3, 773.15"
    })
    void conditionsThatCannotBeAreRefused(double wall, double dilution, double arc, double hydrogen, double start) {
        assertThrows(
                IllegalArgumentException.class,
                () -> new WeldingConditions(wall, dilution, arc, hydrogen, start, Restraint.LOW, SeamShape.FILLET));
    }

    @Test
    void conditionsAtTheirEndsAreTaken() {
        WeldingConditions found = new WeldingConditions(2e-3, 0, 5e5, 100, 293.15, Restraint.LOW, SeamShape.FILLET);
        assertEquals(3e5, found.heatInput(), 1e-9);
        assertEquals(1, new WeldingConditions(2e-3, 1, 5e5, 1, 293.15, Restraint.LOW, SeamShape.FILLET).dilution());
    }
}
