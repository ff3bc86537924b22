package org.seamtally.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Money for each unit of something: "65.00/h", "12.50/lb", "0.35/ft3", "0.16/kWh". The currency stands elsewhere, once
 * for all prices. Two rates are equal where they are written alike: 65.0/h and 65.00/h are not.
 *
 * @param amount of money, with the digits that were written; may be negative
 * @param unit one that the dimension takes, as it was written
 * @param dimension what is priced
 */
public record Rate(BigDecimal amount, String unit, Dimension dimension) {

    // 34 digits: no amount of money has half as many, so that the one rounding that matters is the caller's
    private static final MathContext MONEY = MathContext.DECIMAL128;

    /** @throws IllegalArgumentException where the dimension takes no such unit, or has no natural zero to price from */
    public Rate {
        if (scaleOf(amount, unit, dimension).isShifted()) {
            throw new IllegalArgumentException("nothing is priced by the degree");
        }
    }

    /**
     * Reads an amount and a unit with a bar between.
     *
     * @param text such as {@code 65.00/h}
     * @param dimension what is priced
     * @throws QuantityException where the text is no such rate; the units it names carry their bar: {@code /h}
     */
    public static Rate read(String text, Dimension dimension) {
        Due due = dimension.rateDue();
        String trimmed = Dimension.require(text, due);
        Amount read = Amount.readMoney(trimmed, due);
        String unit = unitAfter(trimmed, read.end(), due);
        dimension.scale(trimmed, unit, due);
        return new Rate(read.numerator(), unit, dimension);
    }

    /**
     * What a quantity costs, unrounded.
     *
     * @param si the quantity in SI, finite
     * @return amount × quantity in this rate's unit, 34 digits
     * @throws IllegalArgumentException where the quantity is not finite
     */
    public BigDecimal of(double si) {
        Scale scale = scale();
        return amount.multiply(decimal(si)).multiply(scale.divisor()).divide(scale.multiple(), MONEY);
    }

    /**
     * A quantity in this rate's unit.
     *
     * @param si the quantity in SI, finite
     * @throws IllegalArgumentException where the quantity is not finite
     */
    public double quantityInUnit(double si) {
        Scale scale = scale();
        return decimal(si)
                .multiply(scale.divisor())
                .divide(scale.multiple(), MONEY)
                .doubleValue();
    }

    /**
     * A quantity as it stands beside this rate, in the rate's unit.
     *
     * @param si the quantity in SI, finite
     */
    public Display show(double si) {
        return new Display(Digits.round(quantityInUnit(si), false), unit);
    }

    /** As it would be written: {@code 65.00/h}. */
    public String text() {
        return amount.toPlainString() + "/" + unit;
    }

    private Scale scale() {
        return scaleOf(amount, unit, dimension);
    }

    private static Scale scaleOf(BigDecimal amount, String unit, Dimension dimension) {
        return dimension.scale(amount + "/" + unit, unit, dimension.rateDue());
    }

    /** The shortest decimal that is this double: 0.45359237 kg is then a pound to the last digit. */
    private static BigDecimal decimal(double si) {
        if (!Double.isFinite(si)) {
            throw new IllegalArgumentException(si + " cannot be priced");
        }
        return BigDecimal.valueOf(si);
    }

    private static String unitAfter(String text, int end, Due due) {
        String rest = Blanks.strip(text.substring(end));
        if (rest.isEmpty()) {
            return rest;
        }
        if (rest.charAt(0) != '/') {
            throw due.malformed(text, "an amount of money is followed by / and a unit");
        }
        return Blanks.strip(rest.substring(1));
    }
}
