package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Conversion factors of NIST Special Publication 811 (2008), appendix B.8, from memory. The printed factor has seven
 * digits; those printed in bold are exact.
 */
class PublishedUnitFactorsTest {

    @ParameterizedTest(name = "1 {1} is exactly {2}")
    @CsvSource({
        "LENGTH, in, 0.0254",
        "LENGTH, ft, 0.3048",
        "AREA, in2, 6.4516e-4",
        "AREA, ft2, 9.290304e-2",
        "VOLUME, L, 0.001",
        "VOLUME, in3, 1.6387064e-5",
        "GAS_VOLUME, ft3, 2.8316846592e-2",
        "MASS, lb, 0.45359237",
        "MASS, oz, 2.8349523125e-2",
        "TIME, min, 60",
        "TIME, h, 3600",
        "SPEED, ft/min, 5.08e-3",
        "GAUGE_PRESSURE, bar, 1e5",
        "PRESSURE, atm, 101325",
        "ENERGY, Wh, 3600",
        "ELECTRICITY, kWh, 3.6e6",
        "ENERGY, Btu, 1055.05585262",
        "HEAT_CONTENT, Btu/lb, 2326",
        "STRESS, N/mm2, 1e6",
        "TEMPERATURE_DIFFERENCE, K, 1",
    })
    void exactFactor(Dimension dimension, String unit, double si) {
        assertEquals(si, dimension.read("1 " + unit));
    }

    @ParameterizedTest(name = "1 {1} is {2}, seven digits")
    @CsvSource({
        "VOLUME, in3, 1.638706e-5",
        "VOLUME, ft3, 2.831685e-2",
        "MASS, lb, 4.535924e-1",
        "MASS, oz, 2.834952e-2",
        "ANGLE, deg, 1.745329e-2",
        "SPEED, in/s, 2.54e-2",
        "FLOW, ft3/min, 4.719474e-4",
        "FLOW, L/min, 1.666667e-5",
        "GAUGE_PRESSURE, psi, 6.894757e3",
        "STRESS, ksi, 6.894757e6",
        "POWER, Btu/h, 2.930711e-1",
        "ENERGY, Btu, 1.055056e3",
        "TEMPERATURE_DIFFERENCE, degF, 5.555556e-1",
        "DENSITY, lb/ft3, 1.601846e1",
        "DENSITY, lb/in3, 2.767990e4",
    })
    void printedFactor(Dimension dimension, String unit, double si) {
        assertEquals(si, dimension.read("1 " + unit), si * 5e-7);
    }

    /** The same publication, B.8: T/K = (t/°F + 459.67)/1.8 and T/K = t/°C + 273.15. */
    @ParameterizedTest(name = "{0} is {1} K")
    @CsvSource({
        "32 degF, 273.15",
        "212 degF, 373.15",
        "70 degF, 294.26111111111111",
        "-40 degF, 233.15",
        "-40 degC, 233.15",
        "-459.67 degF, 0",
        "-273.15 degC, 0",
        "0 K, 0",
        "149 degC, 422.15",
        "422 K, 422",
    })
    void temperatureScales(String text, double kelvin) {
        assertEquals(kelvin, Dimension.TEMPERATURE.read(text));
    }

    /** ISO 80000-3 names mm, cm and m; the prefixes are those of the SI brochure. */
    @ParameterizedTest(name = "1 {1} is {2}")
    @CsvSource({
        "LENGTH, mm, 1e-3",
        "LENGTH, cm, 1e-2",
        "LENGTH, m, 1",
        "AREA, mm2, 1e-6",
        "AREA, cm2, 1e-4",
        "AREA, m2, 1",
        "VOLUME, mm3, 1e-9",
        "VOLUME, cm3, 1e-6",
        "VOLUME, m3, 1",
        "ANGLE, rad, 1",
        "MASS, g, 1e-3",
        "MASS, kg, 1",
        "TIME, ms, 1e-3",
        "TIME, s, 1",
        "SPEED, mm/s, 1e-3",
        "SPEED, m/s, 1",
        "FLOW, m3/s, 1",
        "GAS_VOLUME, m3, 1",
        "GAUGE_PRESSURE, Pa, 1",
        "GAUGE_PRESSURE, mbar, 100",
        "GAUGE_PRESSURE, kPa, 1e3",
        "GAUGE_PRESSURE, MPa, 1e6",
        "PRESSURE, Pa, 1",
        "PRESSURE, mbar, 100",
        "PRESSURE, bar, 1e5",
        "PRESSURE, kPa, 1e3",
        "PRESSURE, MPa, 1e6",
        "CURRENT, A, 1",
        "VOLTAGE, V, 1",
        "POWER, W, 1",
        "POWER, kW, 1e3",
        "POWER, MW, 1e6",
        "ENERGY, J, 1",
        "ENERGY, kJ, 1e3",
        "ENERGY, MJ, 1e6",
        "ENERGY_PER_LENGTH, kJ/mm, 1e6",
        "ENERGY_PER_LENGTH, J/mm, 1e3",
        "ENERGY_PER_LENGTH, kJ/cm, 1e5",
        "ENERGY_PER_LENGTH, J/m, 1",
        "COOLING_RATE, degC/s, 1",
        "HYDROGEN, mL/100g, 1",
        "COUNT, each, 1",
        "STRESS, Pa, 1",
        "STRESS, kPa, 1e3",
        "STRESS, MPa, 1e6",
        "STRESS, GPa, 1e9",
        "HEAT_CONTENT, J/kg, 1",
        "HEAT_CONTENT, kJ/kg, 1e3",
        "HEAT_CONTENT, MJ/kg, 1e6",
        "DENSITY, kg/m3, 1",
        "DENSITY, g/cm3, 1e3",
    })
    void prefixes(Dimension dimension, String unit, double si) {
        assertEquals(si, dimension.read("1 " + unit));
    }
}
