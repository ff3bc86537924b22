package org.seamtally.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A range as it is told to people, in each system of units: in round figures that lie inside what is taken, so that
 * whatever is told is taken. Two digits, and halves of the second below 2; feet from ten feet on: common practice, no
 * source.
 *
 * @param si such as {@code 0.2 to 50 mm}
 * @param us such as {@code 0.0079 to 1.95 in}
 */
public record ToldRange(String si, String us) {

    private static final BigDecimal INCHES_IN_A_FOOT = BigDecimal.valueOf(12);
    private static final BigDecimal LONG_IN_INCHES = BigDecimal.valueOf(120);

    private record End(BigDecimal value, String unit) {}

    /**
     * @param min the least that is taken, in a unit of the SI's side, as it would be sent
     * @param max the most
     */
    public static ToldRange of(Dimension dimension, String min, String max) {
        String si = joined(written(min), written(max));
        boolean alike = dimension
                .show(1, UnitSystem.SI)
                .unit()
                .equals(dimension.show(1, UnitSystem.US).unit());
        return new ToldRange(
                si,
                alike
                        ? si
                        : joined(
                                customary(dimension, min, RoundingMode.CEILING),
                                customary(dimension, max, RoundingMode.FLOOR)));
    }

    private static End written(String text) {
        int blank = text.indexOf(' ');
        return new End(new BigDecimal(text.substring(0, blank)), text.substring(blank + 1));
    }

    private static End customary(Dimension dimension, String text, RoundingMode inwards) {
        Display shown = dimension.show(dimension.read(text), UnitSystem.US);
        BigDecimal value = BigDecimal.valueOf(shown.value());
        boolean inFeet = dimension == Dimension.LENGTH && value.abs().compareTo(LONG_IN_INCHES) >= 0;
        BigDecimal told = inFeet ? value.divide(INCHES_IN_A_FOOT, 9, RoundingMode.HALF_EVEN) : value;
        return new End(round(told, step(dimension, told), inwards), inFeet ? "ft" : shown.unit());
    }

    private static BigDecimal step(Dimension dimension, BigDecimal value) {
        if (dimension == Dimension.TEMPERATURE || value.signum() == 0) {
            return BigDecimal.ONE;
        }
        int second = value.precision() - value.scale() - 2;
        boolean belowTwo = value.abs().compareTo(BigDecimal.valueOf(2).scaleByPowerOfTen(second + 1)) < 0;
        return belowTwo
                ? BigDecimal.valueOf(5).scaleByPowerOfTen(second - 1)
                : BigDecimal.ONE.scaleByPowerOfTen(second);
    }

    private static BigDecimal round(BigDecimal value, BigDecimal step, RoundingMode inwards) {
        return value.divide(step, 0, inwards).multiply(step);
    }

    private static String joined(End min, End max) {
        String most = plain(max.value) + " " + Display.sign(max.unit);
        boolean unitOnce = min.unit.equals(max.unit) || min.value.signum() == 0;
        return plain(min.value) + (unitOnce ? "" : " " + Display.sign(min.unit)) + " to " + most;
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
