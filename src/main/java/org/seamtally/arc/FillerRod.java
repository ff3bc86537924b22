package org.seamtally.arc;

/**
 * The rod that is fed by hand.
 *
 * @param diameter m, positive
 * @param length m, positive
 * @param stub what is thrown away of each rod, m, 0 to below the length
 * @param depositionEfficiency deposited over melted, above 0, at most 1; 0.95 to 1 in GTAW (handbooks, from memory)
 */
public record FillerRod(double diameter, double length, double stub, double depositionEfficiency) {

    /**
     * Density of carbon and low-alloy steel, kg/m³: EN 1993-1-2:2005, 3.2.2.
     */
    public static final double STEEL_DENSITY = 7850;

    /** @throws IllegalArgumentException where a figure is out of its range */
    public FillerRod {
        ArcSettings.requirePositive("rod diameter", diameter);
        ArcSettings.requirePositive("rod length", length);
        if (!(stub >= 0 && stub < length)) {
            throw new IllegalArgumentException("a stub of " + stub + " m leaves nothing of a rod of " + length + " m");
        }
        ArcSettings.requireShare("deposition efficiency", depositionEfficiency);
    }

    /** Mass of one new rod, kg. */
    public double mass() {
        return Math.PI / 4 * diameter * diameter * length * STEEL_DENSITY;
    }

    /**
     * The filler that a deposit takes: consumed = mass / (deposition efficiency · (1 − stub / length)).
     *
     * @param volume deposited, m³, 0 or more
     */
    public FillerUse use(double volume) {
        double deposited = STEEL_DENSITY * volume;
        double consumed = deposited / (depositionEfficiency * (1 - stub / length));
        return new FillerUse(deposited, consumed, consumed / mass());
    }
}
