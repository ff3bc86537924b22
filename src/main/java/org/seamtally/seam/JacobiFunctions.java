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

    private final double complement;
    private final double quarter;
    private final int steps;
    private final double[] ratio = new double[MOST_STEPS + 1];
    private final double[] ratioComplement = new double[MOST_STEPS + 1];
    private final double scale;

    /** @param complement the complementary modulus k', above 0, at most 1 */
    JacobiFunctions(double complement) {
        if (!(complement > 0 && complement <= 1)) {
            throw new IllegalArgumentException("complementary modulus " + complement + " is not in (0, 1]");
        }
        this.complement = complement;
        double a = 1;
        double b = complement;
        int n = 0;
        // 17.6.4: stop where the next difference no longer changes the last bit
        while (a - b > 1e-16 * a && n < MOST_STEPS) {
            double next = (a + b) / 2;
            ratio[++n] = (a - b) / 2 / next;
            b = Math.sqrt(a * b);
            a = next;
            ratioComplement[n] = b / a;
        }
        steps = n;
        scale = Math.scalb(a, n);
        quarter = Math.PI / (2 * a);
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

    /** 16.4.1 to 16.4.4, 0 ≤ u ≤ K/2. */
    private Values direct(double u) {
        double amplitude = scale * u;
        double above = amplitude;
        for (int n = steps; n > 0; n--) {
            above = amplitude;
            double sin = Math.sin(amplitude);
            // asin(ratio · sin), kept to its digits where both are near 1: 1 − ratio² is (b/a)² after the step
            double cosAbove = Math.cos(amplitude);
            double small = ratioComplement[n] * sin;
            double cos = Math.sqrt(cosAbove * cosAbove + small * small);
            amplitude = (amplitude + Math.atan2(ratio[n] * sin, cos)) / 2;
        }
        double cn = Math.cos(amplitude);
        return new Values(Math.sin(amplitude), cn, steps == 0 ? 1 : cn / Math.cos(above - amplitude));
    }
}
