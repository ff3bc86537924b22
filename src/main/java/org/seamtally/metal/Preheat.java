package org.seamtally.metal;

import java.util.OptionalDouble;

/** What counts as a preheat. */
final class Preheat {

    /**
     * °C. A method that asks for no more than a shop's own temperature asks for no preheat: a decision of this project,
     * between the 65 °F (18 °C) of AWS D1.1's lowest row and EN 1011-2's reference temperature of 20 °C.
     */
    private static final double SHOP_TEMPERATURE = 20;

    private Preheat() {}

    /** Takes °C, gives K; empty where that is no preheat. */
    static OptionalDouble asked(double celsius) {
        return celsius > SHOP_TEMPERATURE ? OptionalDouble.of(Celsius.toKelvin(celsius)) : OptionalDouble.empty();
    }
}
