package org.seamtally.metal;

/**
 * How long the seam takes to cool from 800 to 500 °C, t₈₅: EN 1011-2:2001 annex D, read in second-hand copies, for
 * unalloyed and low-alloy steel. The heat input is the standard's own: 0.6 of the arc energy for gas tungsten arc welding,
 * whatever the arc efficiency elsewhere is.
 *
 * @param thin s, two-dimensional heat flow (slow bound of the shape factor)
 * @param thick s, three-dimensional heat flow
 * @param fastest s, the fast bound: what holds with the least shape factor of two-dimensional flow
 * @param transitionThickness m; thinner than this the heat flow is two-dimensional
 * @param regime which of the two flows holds
 */
public record CoolingTime(double thin, double thick, double fastest, double transitionThickness, Regime regime) {

    /** Thermal efficiency of process 141 in EN 1011-1 table 1, from memory. */
    public static final double THERMAL_EFFICIENCY = 0.6;

    /** The span that t₈₅ measures, K. */
    static final double SPAN = 300;

    /** Which way the heat flows. */
    public enum Regime {
        /** In the plane of the sheet: two-dimensional. */
        THIN,
        /** Into the depth as well: three-dimensional. */
        THICK
    }

    /**
     * Computes both flows and which one holds.
     *
     * @param arcEnergy U·I/v, J/m, above 0
     * @param startTemperature of the metal, K, above 0 and below 773.15 (500 °C), where the span ends
     * @param thickness the thicker wall at the joint, m, above 0
     * @param shape of the seam
     * @throws IllegalArgumentException where one of them cannot be
     */
    public static CoolingTime of(double arcEnergy, double startTemperature, double thickness, SeamShape shape) {
        Given.positive("arc energy per length", arcEnergy);
        Given.positive("thickness", thickness);
        double t0 = Given.startTemperature(startTemperature);
        double q = THERMAL_EFFICIENCY * arcEnergy * 1e-6; // kJ/mm
        double d = thickness * 1e3; // mm
        double to500 = 1 / (500 - t0);
        double to800 = 1 / (800 - t0);
        double flat = (4300 - 4.3 * t0) * 1e5;
        double deep = 6700 - 5 * t0;
        // annex D, two-dimensional heat flow, for F₂ = 1
        double plane = flat * q * q / (d * d) * (to500 * to500 - to800 * to800);
        // annex D, three-dimensional heat flow
        double thick = deep * q * (to500 - to800) * shape.thick();
        // where the two meet; the annex prints it for F₂ = F₃
        double transition = Math.sqrt(flat / deep * q * (to500 + to800) * shape.thin() / shape.thick());
        return new CoolingTime(
                plane * shape.thin(),
                thick,
                Math.max(plane * shape.thinFast(), thick),
                transition * 1e-3,
                d < transition ? Regime.THIN : Regime.THICK);
    }

    /** t₈₅ of the flow that holds, s: the longer of the two. */
    public double time() {
        return Math.max(thin, thick);
    }
}
