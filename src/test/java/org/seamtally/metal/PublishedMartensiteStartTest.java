package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Hand-derived from Andrews 1965 and van Bohemen 2012, both read in second-hand copies. */
class PublishedMartensiteStartTest {

    @ParameterizedTest
    @CsvSource({
        // analysis, °C by hand: 539 − 423C − 30.4Mn − 17.7Ni − 12.1Cr − 7.5Mo
        "C 0.305 Mn 0.50 Si 0.25 Cr 0.95 Mo 0.20, 381.790",
        "C 0.30 Mn 0.50 Si 0.25 Cr 0.95 Mo 0.20, 383.905",
        "C 0.20 Mn 0.45, 440.720",
        "C 0.40 Mn 0.85 Cr 0.95 Mo 0.20, 330.965",
        "C 0.40 Mn 0.70 Ni 1.80 Cr 0.80 Mo 0.25, 305.105"
    })
    void andrews(String analysis, double celsius) {
        assertEquals(celsius + 273.15, MartensiteStart.of(Analyses.of(analysis)).andrews(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        // iron alone is 565; each element's weight by hand
        "Mn 1, 534",
        "Si 1, 552",
        "Cr 1, 555",
        "Ni 1, 547",
        "Mo 1, 553",
        // 600·(1 − e^−0.96) = 370.2643
        "C 1, 194.7357",
        // 565 − (15.5 + 3.25 + 9.5 + 2.4) − 600·(1 − e^−0.2928) = 565 − 30.65 − 152.2972
        "C 0.305 Mn 0.50 Si 0.25 Cr 0.95 Mo 0.20, 382.0528"
    })
    void vanBohemen(String analysis, double celsius) {
        assertEquals(celsius + 273.15, MartensiteStart.of(Analyses.of(analysis)).vanBohemen(), 1e-3);
    }

    @Test
    void andrewsIsMeantForCarbonUpToSixTenths() {
        assertTrue(MartensiteStart.of(Analyses.of("C 0.6")).outside().isEmpty());
        assertEquals(1, MartensiteStart.of(Analyses.of("C 0.6001")).outside().size());
    }
}
