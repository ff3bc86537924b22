package org.seamtally.arc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The melting balance against textbooks' worked examples. They take 10 J/mm³ where this project takes 10.5. */
class PublishedMeltingBalanceTest {

    private static final double TEXTBOOK_OVER_OURS = 10.0 / 10.5;

    /**
     * AWS Welding Handbook, 8th edition, volume 1, chapter 2, from memory: 20 V, 200 A, 5 mm/s, arc efficiency 0.9,
     * melting efficiency 0.3 and 10 J/mm³ melt a section of 21.6 mm².
     */
    @Test
    void theHandbooksExampleMeltsItsSection() {
        double section = MeltingBalance.meltingRate(arc(200, 20, 0.9, 0.3)) / 5e-3;
        assertEquals(21.6e-6, section / TEXTBOOK_OVER_OURS, 1e-15);
    }

    /**
     * P. N. Rao, Manufacturing Technology, from memory: 20 V, 200 A, 5 mm/s, a section of 20 mm², 10 J/mm³ and an arc
     * efficiency of 0.85 come to a melting efficiency of 29.41 %.
     */
    @Test
    void raosExampleMeltsAtItsEfficiency() {
        double section = MeltingBalance.meltingRate(arc(200, 20, 0.85, 0.2941)) / 5e-3;
        assertEquals(20e-6, section / TEXTBOOK_OVER_OURS, 20e-6 * 2e-4);
    }

    /** (T_m + 273)²/300 000 J/mm³, the same handbook, from memory; T_m in °C. */
    @ParameterizedTest(name = "{0} °C: {1} J/mm³")
    @CsvSource({"1482, 10.27", "1510, 10.60", "1525, 10.78", "1540, 10.96"})
    void theEnergyToMeltSteelGoesWithItsMeltingPoint(double celsius, double joulesPerCubicMillimetre) {
        assertEquals(joulesPerCubicMillimetre * 1e9, meltingEnergy(celsius + 273), 5.1e6);
    }

    /** M. P. Groover, Fundamentals of Modern Manufacturing, table of unit energies for melting, from memory. */
    @ParameterizedTest(name = "{0} K: {1} J/mm³")
    @CsvSource({"1760, 10.3", "1700, 9.6", "1670, 9.3", "1530, 7.8", "930, 2.9", "2070, 14.3"})
    void theEnergyToMeltOtherMetals(double kelvin, double joulesPerCubicMillimetre) {
        assertEquals(joulesPerCubicMillimetre * 1e9, meltingEnergy(kelvin), 5.1e7);
    }

    /** The constant taken lies where the handbook's formula puts steels. */
    @Test
    void theConstantIsASteels() {
        assertEquals(10.5e9, MeltingBalance.MELTING_ENERGY);
        assertTrue(meltingEnergy(1482 + 273) < MeltingBalance.MELTING_ENERGY);
        assertTrue(meltingEnergy(1525 + 273) > MeltingBalance.MELTING_ENERGY);
    }

    /** 7 mm³ of filler at a dilution of 0.3 make 10 mm³ of weld: 105 J, of 1000 W · 0.7 · 0.2, by hand. */
    @Test
    void baseMetalIsMeltedToo() {
        ArcSettings arc = arc(100, 10, 0.7, 0.2);
        assertEquals(0.75, MeltingBalance.meltingTime(7e-9, 0.3, arc), 1e-15);
        assertEquals(0.525, MeltingBalance.meltingTime(7e-9, 0, arc), 1e-15);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, 1, 1.5, Double.NaN})
    void aDilutionThatLeavesNoFillerIsRefused(double dilution) {
        assertThrows(
                IllegalArgumentException.class,
                () -> MeltingBalance.meltingTime(1e-9, dilution, arc(100, 10, 0.7, 0.2)));
    }

    private static ArcSettings arc(double current, double voltage, double arcEfficiency, double meltingEfficiency) {
        return new ArcSettings(current, voltage, arcEfficiency, meltingEfficiency, OptionalDouble.empty(), 1, 0, 1);
    }

    /** The handbook's estimate of the energy that melts a volume of metal, J/m³, by its melting point in K. */
    private static double meltingEnergy(double meltingPoint) {
        return meltingPoint * meltingPoint / 300_000 * 1e9;
    }
}
