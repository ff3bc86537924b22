package org.seamtally.metal;

/**
 * How fast the seam's centreline cools at a given temperature: Adams' equations after Rosenthal, as the AWS Welding
 * Handbook, vol. 1, prints them for a bead on a plate, from memory. The heat input is 0.6 of the arc energy, as for t₈₅, so
 * that the two can be compared; no shape factor is taken. Meant for complete-penetration passes on carbon and low-alloy
 * steel; a few diameters from a tube's end or a tack the heat is held back, and the true rate is lower.
 *
 * @param at700 K/s, at 700 °C
 * @param at540 K/s, at 540 °C, where the pearlite nose lies
 */
public record CoolingRate(double at700, double at540) {

    /** Thermal conductivity of steel at these temperatures, W/mK: the handbook's figure. */
    private static final double CONDUCTIVITY = 28;

    /** Volumetric heat capacity of steel at these temperatures, J/m³K: the handbook's figure. */
    private static final double HEAT_CAPACITY = 4.4e6;

    /** Relative thickness that parts the thin plate from the thick: the handbook's dividing line of 0.6 to 0.9. */
    private static final double PARTING = 0.75;

    /**
     * Computes both rates.
     *
     * @param arcEnergy U·I/v, J/m, above 0
     * @param startTemperature of the metal, K, above 0 and below 773.15
     * @param thickness m, above 0
     * @throws IllegalArgumentException where one of them cannot be
     */
    public static CoolingRate of(double arcEnergy, double startTemperature, double thickness) {
        Given.positive("arc energy per length", arcEnergy);
        Given.positive("thickness", thickness);
        double t0 = Given.startTemperature(startTemperature);
        double heat = CoolingTime.THERMAL_EFFICIENCY * arcEnergy;
        return new CoolingRate(at(700 - t0, heat, thickness), at(540 - t0, heat, thickness));
    }

    /**
     * @param above the temperature asked for less the start temperature, K
     * @param heat net heat input, J/m
     * @param thickness m
     * @return K/s
     */
    static double at(double above, double heat, double thickness) {
        double relative = thickness * Math.sqrt(HEAT_CAPACITY * above / heat);
        double thick = 2 * Math.PI * CONDUCTIVITY * above * above / heat;
        // the thin-plate equation is the thick-plate one times the relative thickness squared
        return relative > PARTING ? thick : thick * relative * relative;
    }
}
