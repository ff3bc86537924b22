package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every dimension in both systems of units. */
class ShownAndReadTest {

    private static final long SEED = 41L;

    static Stream<Arguments> everyView() {
        return Arrays.stream(Dimension.values())
                .flatMap(
                        dimension -> Arrays.stream(UnitSystem.values()).map(system -> Arguments.of(dimension, system)));
    }

    private static double[] siValues() {
        Random random = new Random(SEED);
        // twelve decades, evenly by their logarithm
        return random.doubles(2000, -6, 6)
                .map(power -> Math.pow(10, power))
                .sorted()
                .toArray();
    }

    @ParameterizedTest(name = "{0} in {1}, seed " + SEED)
    @MethodSource("everyView")
    void whatIsShownReadsBackToNineDigits(Dimension dimension, UnitSystem system) {
        for (double si : siValues()) {
            Display shown = dimension.show(si, system);
            // 5e-9 is half a unit of the ninth digit at its worst; on a temperature scale 1e-9 degree is the finest
            double finest = dimension == Dimension.TEMPERATURE ? Math.max(si, 273) : si;
            assertEquals(si, dimension.read(shown.value() + " " + shown.unit()), finest * 5.0001e-9, () -> "" + si);
        }
    }

    @ParameterizedTest(name = "{0} in {1}, seed " + SEED)
    @MethodSource("everyView")
    void moreIsNeverShownAsLess(Dimension dimension, UnitSystem system) {
        double before = Double.NEGATIVE_INFINITY;
        for (double si : siValues()) {
            double shown = dimension.show(si, system).value();
            assertTrue(shown >= before, () -> si + " is shown as " + shown);
            before = shown;
        }
    }

    @ParameterizedTest(name = "{0} in {1}, seed " + SEED)
    @MethodSource("everyView")
    void nineDigitsAndNoMore(Dimension dimension, UnitSystem system) {
        for (double si : siValues()) {
            double shown = dimension.show(si, system).value();
            assertEquals(new BigDecimal(shown).round(new MathContext(9)).doubleValue(), shown);
        }
    }

    @ParameterizedTest(name = "{0} in {1}")
    @MethodSource("everyView")
    void theShownUnitIsOneThatIsTaken(Dimension dimension, UnitSystem system) {
        assertTrue(dimension.unitsTaken().contains(dimension.show(300, system).unit()));
    }

    @ParameterizedTest
    @CsvSource({
        "LENGTH, mm, in",
        "AREA, mm2, in2",
        "VOLUME, mm3, in3",
        "ANGLE, deg, deg",
        "MASS, g, lb",
        "TIME, s, s",
        "SPEED, mm/s, in/min",
        "FLOW, L/min, ft3/h",
        "GAS_VOLUME, L, ft3",
        "GAUGE_PRESSURE, kPa, psi",
        "PRESSURE, kPa, psi",
        "CURRENT, A, A",
        "VOLTAGE, V, V",
        "POWER, W, W",
        "ENERGY, kJ, Btu",
        "ELECTRICITY, kWh, kWh",
        "ENERGY_PER_LENGTH, kJ/mm, kJ/in",
        "TEMPERATURE, degC, degF",
        "TEMPERATURE_DIFFERENCE, K, degF",
        "COOLING_RATE, degC/s, degF/s",
        "HYDROGEN, mL/100g, mL/100g",
        "COUNT, each, each",
        "STRESS, MPa, ksi",
        "HEAT_CONTENT, MJ/kg, Btu/lb",
        "DENSITY, kg/m3, lb/ft3",
    })
    void shownUnits(Dimension dimension, String si, String us) {
        assertEquals(si, dimension.show(300, UnitSystem.SI).unit());
        assertEquals(us, dimension.show(300, UnitSystem.US).unit());
    }

    @ParameterizedTest
    @CsvSource({
        "LENGTH, 1.5 in, 38.1, 1.5",
        "LENGTH, 0 mm, 0, 0",
        "LENGTH, -1.5 in, -38.1, -1.5",
        "LENGTH, 123.45678949 mm, 123.456789, 4.86050352",
        "LENGTH, 123.45678951 mm, 123.45679, 4.86050352",
        "LENGTH, 0.99999999999 mm, 1, 0.0393700787",
        "FLOW, 15 ft3/h, 7.07921165, 15",
        "TEMPERATURE, 32 degF, 0, 32",
        "TEMPERATURE, 0 degF, -17.7777778, 0",
        "TEMPERATURE, 300 degF, 148.888889, 300",
        "ENERGY, 1 kWh, 3600, 3412.14163",
        "MASS, 1e-30 g, 1e-30, 2.20462262e-33",
        "MASS, 1e30 g, 1e30, 2.20462262e27",
    })
    void shownValues(Dimension dimension, String text, double si, double us) {
        assertEquals(si, dimension.show(dimension.read(text), UnitSystem.SI).value());
        assertEquals(us, dimension.show(dimension.read(text), UnitSystem.US).value());
    }

    @Test
    void noMinusZero() {
        assertEquals(0.0, Dimension.LENGTH.show(-0.0, UnitSystem.SI).value());
        assertEquals(
                0.0,
                Dimension.TEMPERATURE.show(Math.nextDown(273.15), UnitSystem.SI).value());
        assertEquals(
                0.0,
                Dimension.TEMPERATURE
                        .show(Dimension.TEMPERATURE.read("0 F"), UnitSystem.US)
                        .value());
    }

    @ParameterizedTest
    @CsvSource({"NaN", "Infinity", "-Infinity", "1e306"})
    void whatIsNotFiniteIsNotShown(double si) {
        assertThrows(IllegalArgumentException.class, () -> Dimension.LENGTH.show(si, UnitSystem.SI));
    }

    @Test
    void aDisplayNeedsItsUnit() {
        assertThrows(IllegalArgumentException.class, () -> new Display(1, " "));
    }

    @Test
    void unitSystemsAreNamed() {
        assertEquals(UnitSystem.SI, UnitSystem.of("si"));
        assertEquals(UnitSystem.US, UnitSystem.of("us"));
        for (UnitSystem system : UnitSystem.values()) {
            assertEquals(system, UnitSystem.of(system.word()));
        }
        for (String other : new String[] {"SI", "metric", "", "us "}) {
            assertThrows(IllegalArgumentException.class, () -> UnitSystem.of(other));
        }
        assertThrows(IllegalArgumentException.class, () -> UnitSystem.of(null));
    }

    /** The other side rounds the exact binary value in decimals. */
    @Test
    void roundingIsThatOfExactDecimals() {
        for (double value : siValues()) {
            double nearest = new BigDecimal(value).round(new MathContext(9)).doubleValue();
            assertEquals(nearest, Digits.round(value, false));
            assertEquals(-nearest, Digits.round(-value, false));
        }
    }
}
