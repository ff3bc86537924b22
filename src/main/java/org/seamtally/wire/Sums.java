package org.seamtally.wire;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.UnitSystem;

/**
 * A batch's sums as quantities, by their paths in an order's totals.
 *
 * @param units of the amounts
 */
record Sums(JobTotals totals, UnitSystem units) {

    // as every quantity of an answer
    private static final MathContext NINE_DIGITS = new MathContext(9);

    /** One sum; 0 where no frame has any. */
    Quantity of(String path, Dimension dimension) {
        return of(dimension, path);
    }

    /** Several together. */
    Quantity of(Dimension dimension, String... paths) {
        String unit = dimension.show(0, units).unit();
        for (String path : paths) {
            String kept = totals.units().getOrDefault(order(path), unit);
            if (!kept.equals(unit)) {
                throw new IllegalStateException(path + " is kept in " + kept + ", not in " + unit);
            }
        }
        return new Quantity(sum(paths).round(NINE_DIGITS).doubleValue(), unit);
    }

    /** Share that parts have of a whole; 0 where there is none of it. */
    double share(String whole, String... parts) {
        BigDecimal all = sum(whole);
        return all.signum() == 0 ? 0 : sum(parts).divide(all, NINE_DIGITS).doubleValue();
    }

    private BigDecimal sum(String... paths) {
        return Arrays.stream(paths)
                .map(path -> totals.amounts().getOrDefault(order(path), BigDecimal.ZERO))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static String order(String path) {
        return "forQuantity." + path;
    }
}
