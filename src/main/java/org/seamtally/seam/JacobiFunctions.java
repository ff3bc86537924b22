package org.seamtally.seam;

/**
 * Jacobi's elliptic functions sn, cn, dn by the arithmetic-geometric mean (Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 16.4 and 17.6), with the quarter-period shift of 16.8.
 *
 * <p>They are given by the complementary modulus k', since two tubes of nearly one size mean k' near 1e-12: a library
 * that takes the parameter m = 1 − k'² has no digit of it left. For the same reason cn and dn keep their relative, not
 * just their absolute, accuracy at the quarter period, where they nearly vanish.
 */
final class JacobiFunctions {

    /** The mean converges quadratically; from k' = 1e-13 seven halvings reach the last bit, so this is never met. */
    private static final int MOST_STEPS = 16;

    /** sn u is u, and cn and dn are 1, to the last bit; the quotients would pass what a double holds. */
    private static final double TINY = 1e-30;

    /** Where two means agree this well the next two do to the last bit: their difference goes with its square. */
    private static final double AGREE = 1e-8;

    private final double complement;
    private final double quarter;
    /** The last step of the mean that is kept. */
    private final int last;

    private final double[] arithmetic = new double[MOST_STEPS];
    private final double[] geometric = new double[MOST_STEPS];
    private final double limit;

    /** @param complement the complementary modulus k', above 0, at most 1 */
    JacobiFunctions(double complement) {
        if (!(complement > 0 && complement <= 1)) {
            throw new IllegalArgumentException("complementary modulus " + complement + " is not in (0, 1]");
        }
        this.complement = complement;
        double a = 1;
        double b = complement;
        int n = 0;
        arithmetic[0] = a;
        geometric[0] = b;
        // 17.6.1
        while (a - b > AGREE * a && n < MOST_STEPS - 1) {
            double next = (a + b) / 2;
            b = Math.sqrt(a * b);
            a = next;
            n++;
            arithmetic[n] = a;
            geometric[n] = b;
        }
        last = n;
        limit = (a + b) / 2;
        quarter = Math.PI / (2 * limit);
    }

    /** The quarter period K. */
    double quarter() {
        return quarter;
    }

    /** The functions at one place. */
    record Values(double sn, double cn, double dn) {}

    /** @param u 0 to 4K */
    Values at(double u) {
        // fold into one quarter: sn(2K − u) = sn u, sn(2K + u) = −sn u, and the like (16.8)
        double sign = 1;
        double folded = u;
        if (folded > 2 * quarter) {
            sign = -1;
            folded -= 2 * quarter;
        }
        double cnSign = sign;
        if (folded > quarter) {
            cnSign = -sign;
            folded = 2 * quarter - folded;
        }
        if (folded > quarter / 2) {
            Values v = direct(quarter - folded);
            // 16.8: sn(K − v) = cd v, cn(K − v) = k' sd v, dn(K − v) = k' nd v
            return new Values(sign * v.cn / v.dn, cnSign * complement * v.sn / v.dn, complement / v.dn);
        }
        Values v = direct(folded);
        return new Values(sign * v.sn, cnSign * v.cn, v.dn);
    }

    /**
     * 0 ≤ u ≤ K/2: the descending Landen transformation (16.12) run backwards from the circular functions that it ends in,
     * in the quotients cn/sn and dn (R. Bulirsch, Numerische Mathematik 7, 1965, 78), which take no inverse function.
     */
    private Values direct(double u) {
        if (u < TINY) {
            return new Values(u, 1, 1);
        }
        double amplitude = limit * u;
        double cotangent = Math.cos(amplitude) / Math.sin(amplitude);
        double over = limit * cotangent;
        double dn = 1;
        double rising = cotangent;
        for (int n = last; n >= 0; n--) {
            rising *= over;
            over *= dn;
            dn = (geometric[n] + rising) / (arithmetic[n] + rising);
            rising = over / arithmetic[n];
        }
        double sn = 1 / Math.sqrt(over * over + 1);
        return new Values(sn, over * sn, dn);
    }
}
