package org.seamtally.gas;

/**
 * The hose between meter and gas valve.
 *
 * @param insideDiameter m, above 0
 * @param length m, above 0
 */
public record Hose(double insideDiameter, double length) {

    /** @throws IllegalArgumentException where a measure is not above 0 */
    public Hose {
        Refuse.unlessPositive(insideDiameter, "the hose's inside diameter");
        Refuse.unlessPositive(length, "the hose's length");
    }

    /** Cross-section of the bore, m². */
    public double area() {
        return Math.PI / 4 * insideDiameter * insideDiameter;
    }

    /** What the bore holds, m³. */
    public double volume() {
        return area() * length;
    }
}
