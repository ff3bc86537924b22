package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The panel's places and weights against what they are defined by, and Gauss's own seven against a library's. */
class GaussKronrodTest {

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 5, 8, 10, 13, 14, 17, 20, 22, 23})
    void theFifteenAreExactForAPower(int power) {
        assertEquals(integral(power), sum(power, false), 4e-16);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 4, 7, 10, 12, 13})
    void theSevenAreExactForAPower(int power) {
        assertEquals(integral(power), sum(power, true), 4e-16);
    }

    /** What they leave is the power above: 24, and 14. */
    @Test
    void exactNoFurther() {
        assertEquals(4e-9, Math.abs(integral(24) - sum(24, false)), 2e-9);
        assertEquals(1.7e-4, Math.abs(integral(14) - sum(14, true)), 1.5e-4);
    }

    @Test
    void theSevenAreTheLibrarys() {
        GaussIntegrator seven = new GaussIntegratorFactory().legendre(7);
        for (int i = 0; i < seven.getNumberOfPoints(); i++) {
            int place = 2 * i + 1;
            assertEquals(seven.getPoint(i), GaussKronrod.place(place), 1e-15);
            assertEquals(seven.getWeight(i), GaussKronrod.gaussWeight(place), 1e-15);
        }
    }

    @Test
    void theOthersAreNoneOfTheSeven() {
        for (int i = 0; i < GaussKronrod.PLACES; i += 2) {
            assertEquals(0, GaussKronrod.gaussWeight(i));
        }
    }

    /** Of x to the power, from -1 to 1. */
    private static double integral(int power) {
        return power % 2 == 0 ? 2.0 / (power + 1) : 0;
    }

    private static double sum(int power, boolean seven) {
        double sum = 0;
        for (int i = 0; i < GaussKronrod.PLACES; i++) {
            double weight = seven ? GaussKronrod.gaussWeight(i) : GaussKronrod.weight(i);
            sum += weight * Math.pow(GaussKronrod.place(i), power);
        }
        return sum;
    }
}
