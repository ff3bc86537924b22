package org.seamtally.preheat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Heat content of carbon steel: EN 1993-1-2:2005, 3.4.1.2, as several public codes that cite the clause have it. */
class PublishedSteelHeatTest {

    /** The standard's polynomial at round temperatures, J/(kg K). */
    @ParameterizedTest(name = "{0} °C: {1} J/(kg K)")
    @CsvSource({
        "20, 439.802",
        "100, 487.620",
        "150, 510.418",
        "200, 529.760",
        "300, 564.740",
        "400, 605.880",
        "500, 666.500"
    })
    void specificHeatOfTheStandard(double celsius, double expected) {
        assertEquals(expected, SteelHeat.specificHeat(celsius + 273.15), 5.1e-4);
    }

    /** At 600 °C the standard goes over to 666 + 13002/(738 − θ) = 760.217: the polynomial meets it to 0.04 %. */
    @Test
    void theRangesEndMeetsTheNextOfTheStandardsFormulas() {
        assertEquals(759.92, SteelHeat.specificHeat(873.15), 5.1e-3);
        assertEquals(666 + 13002.0 / 138, SteelHeat.specificHeat(873.15), 0.3);
    }

    /** Heat taken up from 20 °C, kJ/kg, and the mean specific heat, J/(kg K): the polynomial's integral. */
    @ParameterizedTest(name = "20 to {0} °C: {1} kJ/kg")
    @CsvSource({
        "100, 37.207, 465.09",
        "150, 62.176, 478.28",
        "200, 88.191, 489.95",
        "250, 115.122, 500.53",
        "300, 142.920, 510.43",
        "600, 335.738, 578.86"
    })
    void heatTakenUpFromRoomTemperature(double celsius, double kilojoules, double mean) {
        double content = SteelHeat.content(293.15, Math.min(celsius + 273.15, SteelHeat.GREATEST_TEMPERATURE));
        assertEquals(kilojoules * 1e3, content, 0.51);
        assertEquals(mean, content / (celsius - 20), 5.1e-3);
    }

    /** The integral against a general-purpose library's quadrature. */
    @ParameterizedTest
    @CsvSource({"253.15, 293.15", "293.15, 422.04", "422.04, 700", "300, 873"})
    void heatTakenUpIsTheIntegralOfTheSpecificHeat(double from, double to) {
        double expected = new IterativeLegendreGaussIntegrator(8, 1e-12, 1e-12)
                .integrate(10_000, SteelHeat::specificHeat, from, to);
        assertEquals(expected, SteelHeat.content(from, to), 1e-9 * expected);
        assertEquals(-expected, SteelHeat.content(to, from), 1e-9 * expected);
    }

    /** EN 1993-1-2:2005, 3.2.2. */
    @Test
    void densityOfTheStandard() {
        assertEquals(7850, SteelHeat.DENSITY);
    }

    @ParameterizedTest
    @ValueSource(doubles = {873.1500001, 1000})
    void beyondSixHundredDegreesItIsRefused(double kelvin) {
        assertThrows(IllegalArgumentException.class, () -> SteelHeat.content(293.15, kelvin));
        assertThrows(IllegalArgumentException.class, () -> SteelHeat.content(kelvin, 293.15));
    }

    @Test
    void sixHundredDegreesThemselvesAreTaken() {
        assertEquals(335_738, SteelHeat.content(293.15, 873.15), 0.51);
        assertEquals(0, SteelHeat.content(873.15, 873.15));
    }
}
