package org.seamtally.quantity;

/**
 * A quantity as an answer shows it.
 *
 * @param value finite, rounded to 9 significant digits
 * @param unit the unit's symbol, such as {@code mm}
 */
public record Display(double value, String unit) {

    /** @throws IllegalArgumentException where the value is not finite or the unit is blank */
    public Display {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(value + " " + unit + " cannot be shown: it is not finite");
        }
        if (unit.isBlank()) {
            throw new IllegalArgumentException("a quantity is shown with its unit");
        }
    }

    /** The unit as it stands in a text: {@code mm²}, {@code °C}. */
    String sign() {
        return sign(unit);
    }

    /** A unit's symbol as it stands in a text: {@code mm²} for {@code mm2}. */
    public static String sign(String unit) {
        return unit.replace("degC", "°C")
                .replace("degF", "°F")
                .replace('2', '²')
                .replace('3', '³')
                .replace("100g", "100 g");
    }
}
