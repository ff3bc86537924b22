package org.seamtally.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers in sentences: so many decimals, a half rounded away from zero, as a format of {@code %.2f} writes them. */
public final class Decimals {

    private static final double[] POWERS = {1, 10, 100, 1000};

    // up to here a product by a power of ten is good to 1e-7, far better than the next one
    private static final double GREATEST = 1e9;

    // nearer to a half than this the product's own rounding could decide
    private static final double NEAR_HALF = 1e-3;

    private Decimals() {}

    /**
     * A number with a fixed number of decimals.
     *
     * @param value finite
     * @param decimals 0 or more
     */
    public static String of(double value, int decimals) {
        double scaled = decimals < POWERS.length ? Math.abs(value) * POWERS[decimals] : GREATEST;
        double whole = Math.floor(scaled);
        if (scaled < GREATEST && Math.abs(scaled - whole - 0.5) > NEAR_HALF) {
            return text((long) (scaled - whole > 0.5 ? whole + 1 : whole), decimals, isNegative(value));
        }
        String digits = BigDecimal.valueOf(Math.abs(value))
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
        return isNegative(value) ? "-" + digits : digits;
    }

    private static boolean isNegative(double value) {
        return Double.doubleToRawLongBits(value) < 0;
    }

    private static String text(long scaled, int decimals, boolean negative) {
        String digits = Long.toString(scaled);
        StringBuilder text = new StringBuilder(digits.length() + decimals + 3);
        if (negative) {
            text.append('-');
        }
        for (int missing = decimals + 1 - digits.length(); missing > 0; missing--) {
            text.append('0');
        }
        text.append(digits);
        if (decimals > 0) {
            text.insert(text.length() - decimals, '.');
        }
        return text.toString();
    }
}
