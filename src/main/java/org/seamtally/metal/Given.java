package org.seamtally.metal;

import java.util.Locale;

/** Refuses what cannot be. */
final class Given {

    /** Where the span of t₈₅ ends, °C: metal that starts hotter never cools through it. */
    private static final double SPAN_END = 500;

    private Given() {}

    static void positive(String what, double value) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " " + value + " is not positive and finite");
        }
    }

    static void within(String what, double value, double least, double greatest) {
        if (!(value >= least && value <= greatest)) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "%s %s is not from %s to %s", what, value, least, greatest));
        }
    }

    /** Takes kelvins, gives degrees Celsius. */
    static double startTemperature(double kelvin) {
        positive("start temperature", kelvin);
        if (Celsius.of(kelvin) >= SPAN_END) {
            throw new IllegalArgumentException("start temperature " + kelvin + " K is not below 773.15 K");
        }
        return Celsius.of(kelvin);
    }
}
