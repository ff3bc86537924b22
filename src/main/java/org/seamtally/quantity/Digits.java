package org.seamtally.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Rounding to the digits that are shown. */
final class Digits {

    /** Nine: a decision of this project. Far beyond any measurement, and two machines' last bits do not show. */
    private static final int SHOWN = 9;

    private static final MathContext NINE = new MathContext(SHOWN, RoundingMode.HALF_EVEN);

    // up to here a power of ten is an exact double, so that one division gives the nearest double to the decimal
    private static final int LARGEST_EXACT_POWER = 22;

    private static final double[] POWERS = powers();

    private Digits() {}

    /**
     * @param shifted whether the value came from a subtraction, as on a temperature scale: then no digit finer than
     *     1e-9 is shown, since below it near 0 degrees there is only what the subtraction left over
     */
    static double round(double value, boolean shifted) {
        if (value == 0 || !Double.isFinite(value)) {
            return value + 0.0; // no minus zero
        }
        int decimals = SHOWN - 1 - (int) Math.floor(Math.log10(Math.abs(value)));
        int places = shifted ? Math.min(decimals, SHOWN) : decimals;
        if (Math.abs(places) > LARGEST_EXACT_POWER) {
            // new BigDecimal would spell out the binary fraction: the shortest decimal is what the double stands for
            return BigDecimal.valueOf(value).round(NINE).doubleValue();
        }
        double rounded = places >= 0
                ? Math.rint(value * POWERS[places]) / POWERS[places]
                : Math.rint(value / POWERS[-places]) * POWERS[-places];
        return rounded + 0.0;
    }

    private static double[] powers() {
        double[] powers = new double[LARGEST_EXACT_POWER + 1];
        for (int power = 0; power < powers.length; power++) {
            powers[power] = new BigDecimal(1).scaleByPowerOfTen(power).doubleValue();
        }
        return powers;
    }
}
