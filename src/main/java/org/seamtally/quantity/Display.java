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
}
