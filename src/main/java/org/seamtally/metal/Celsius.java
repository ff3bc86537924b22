package org.seamtally.metal;

/** The published formulas are written in degrees Celsius; the rooms speak kelvins. */
final class Celsius {

    private static final double ZERO = 273.15;

    private Celsius() {}

    static double toKelvin(double celsius) {
        return celsius + ZERO;
    }

    static double of(double kelvin) {
        return kelvin - ZERO;
    }

    /** From degrees Fahrenheit, in which AWS D1.1 prints its table. */
    static double ofFahrenheit(double fahrenheit) {
        return (fahrenheit - 32) / 1.8;
    }
}
