package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.hipparchus.special.elliptic.jacobi.CopolarN;
import org.hipparchus.special.elliptic.jacobi.JacobiEllipticBuilder;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Jacobi's functions against a general-purpose library (Hipparchus) where its parameter m = 1 − k'² still has its
 * digits; near m = 1, which it was not made for, against identities and limits (Abramowitz and Stegun, chapters 16 and
 * 17).
 */
class JacobiFunctionsTest {

    @ParameterizedTest
    @ValueSource(doubles = {1, 0.999, 0.9, 0.7, 0.5, 0.3, 0.1, 0.03})
    void theyAgreeWithTheLibrary(double complement) {
        JacobiFunctions functions = new JacobiFunctions(complement);
        double m = 1 - complement * complement;
        double k = LegendreEllipticIntegral.bigK(m);
        assertEquals(k, functions.quarter(), 1e-13 * k);
        for (int i = 0; i <= 64; i++) {
            double u = 4 * functions.quarter() * i / 64;
            JacobiFunctions.Values v = functions.at(u);
            CopolarN reference = JacobiEllipticBuilder.build(m).valuesN(u);
            assertEquals(reference.sn(), v.sn(), 1e-12, "sn " + u);
            assertEquals(reference.cn(), v.cn(), 1e-12, "cn " + u);
            assertEquals(reference.dn(), v.dn(), 1e-12, "dn " + u);
        }
    }

    /** 16.9: sn² + cn² = 1 and dn² + k² sn² = 1, written so that nothing cancels: dn² = cn² + k'² sn². */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1e-2, 1e-4, 1e-8, 1e-12, 1e-13})
    void theirSquaresAddUp(double complement) {
        JacobiFunctions functions = new JacobiFunctions(complement);
        for (int i = 0; i <= 200; i++) {
            JacobiFunctions.Values v = functions.at(4 * functions.quarter() * i / 200);
            assertEquals(1, v.sn() * v.sn() + v.cn() * v.cn(), 4e-15);
            double dn = Math.hypot(v.cn(), complement * v.sn());
            assertEquals(dn, v.dn(), 1e-13 * dn, "place " + i);
        }
    }

    /** 17.3.26: K tends to ln(4/k'). */
    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 1e-9, 1e-12, 1e-13})
    void theQuarterPeriodGrowsWithTheLogarithm(double complement) {
        double expected = Math.log(4 / complement);
        assertEquals(expected, new JacobiFunctions(complement).quarter(), 1e-10 * expected);
    }

    /** 16.8: cn(K − v) = k' sd v and dn(K − v) = k' nd v: small, but right in all digits. */
    @Test
    void nearTheQuarterPeriodTheyKeepTheirDigits() {
        double complement = 1e-10;
        JacobiFunctions functions = new JacobiFunctions(complement);
        // a thousandth before K: sd v = v + v³/6·(2k² − 1), nd v = 1 + k² v²/2, to the fourth order
        double v = 1e-3;
        JacobiFunctions.Values near = functions.at(functions.quarter() - v);
        assertEquals(complement * (v + v * v * v / 6), near.cn(), 1e-10 * complement * v);
        assertEquals(complement * (1 + v * v / 2), near.dn(), 1e-11 * complement);
        assertEquals(1, near.sn(), 1e-15);
        JacobiFunctions.Values past = functions.at(functions.quarter() + v);
        assertEquals(-near.cn(), past.cn(), 1e-11 * complement * v);
    }

    /** 16.5: at 0, K/2, K, 2K and 3K. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.6, 1e-3, 1e-12})
    void atTheQuartersTheyAreKnown(double complement) {
        JacobiFunctions functions = new JacobiFunctions(complement);
        double k = functions.quarter();
        assertValues(functions.at(0), 0, 1, 1);
        assertValues(
                functions.at(k / 2),
                1 / Math.sqrt(1 + complement),
                Math.sqrt(complement / (1 + complement)),
                Math.sqrt(complement));
        assertValues(functions.at(k), 1, 0, complement);
        assertValues(functions.at(2 * k), 0, -1, 1);
        assertValues(functions.at(3 * k), -1, 0, complement);
        assertValues(functions.at(4 * k), 0, 1, 1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1e-9, 1.0000001, Double.NaN})
    void aModulusOutOfRangeIsRefused(double complement) {
        assertThrows(IllegalArgumentException.class, () -> new JacobiFunctions(complement));
    }

    private static void assertValues(JacobiFunctions.Values v, double sn, double cn, double dn) {
        assertEquals(sn, v.sn(), 1e-13);
        assertEquals(cn, v.cn(), 1e-13);
        assertEquals(dn, v.dn(), 1e-13);
    }
}
