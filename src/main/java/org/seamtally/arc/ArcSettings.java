package org.seamtally.arc;

import java.util.OptionalDouble;

/**
 * How a joint is welded.
 *
 * @param current A, positive
 * @param voltage across the arc, V, positive
 * @param arcEfficiency share of the arc's energy that reaches the work, above 0, at most 1
 * @param meltingEfficiency share of that which melts metal, above 0, at most 1; to be fitted to a shop's own timed welds
 * @param travelSpeed m/s, positive; empty: from the melting balance
 * @param maxTravelSpeed greatest travel speed that the melting balance may give, m/s, positive
 * @param tackTime arc time of one tack, s, 0 or more
 * @param powerSourceEfficiency arc power over mains power, above 0, at most 1
 */
public record ArcSettings(
        double current,
        double voltage,
        double arcEfficiency,
        double meltingEfficiency,
        OptionalDouble travelSpeed,
        double maxTravelSpeed,
        double tackTime,
        double powerSourceEfficiency) {

    /** @throws IllegalArgumentException where a figure is out of its range */
    public ArcSettings {
        requirePositive("current", current);
        requirePositive("voltage", voltage);
        requireShare("arc efficiency", arcEfficiency);
        requireShare("melting efficiency", meltingEfficiency);
        travelSpeed.ifPresent(speed -> requirePositive("travel speed", speed));
        requirePositive("greatest travel speed", maxTravelSpeed);
        if (!(tackTime >= 0 && tackTime < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a tack time of " + tackTime + " s");
        }
        requireShare("power-source efficiency", powerSourceEfficiency);
    }

    /** Power of the arc, W. */
    public double power() {
        return current * voltage;
    }

    static void requirePositive(String what, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " " + value + " is not a positive number");
        }
    }

    static void requireShare(String what, double value) {
        if (!(value > 0 && value <= 1)) {
            throw new IllegalArgumentException(what + " " + value + " is not above 0 and at most 1");
        }
    }
}
