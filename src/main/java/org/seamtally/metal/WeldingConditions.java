package org.seamtally.metal;

/**
 * How a joint is welded, as far as its metal asks.
 *
 * @param wall the thicker wall at the joint, m, above 0
 * @param dilution share of base metal in the weld metal, 0 to 1
 * @param arcEnergy U·I/v, J/m, above 0; the formulas of EN 1011-2 take 0.6 of it
 * @param hydrogen diffusible hydrogen, mL/100 g deposited metal (ISO 3690), above 0, at most 100
 * @param startTemperature of the metal, K, below 773.15
 * @param restraint how far the parts are held
 * @param shape of the seam
 */
public record WeldingConditions(
        double wall,
        double dilution,
        double arcEnergy,
        double hydrogen,
        double startTemperature,
        Restraint restraint,
        SeamShape shape) {

    /** 0.30: GTAW with filler, 20 to 40 %, handbooks, from memory. */
    public static final double USUAL_DILUTION = 0.30;

    /**
     * mL/100 g. A decision of this project: a clean bare rod under a dry inert gas brings no flux and little moisture, so
     * the deposit lies well within class H5 of ISO 3690 (at most 5); dirt, oil or rust on rod or tube undoes that.
     */
    public static final double USUAL_HYDROGEN = 3;

    /** 20 °C (68 °F), K: a heated shop. */
    public static final double USUAL_START_TEMPERATURE = 293.15;

    /** Common practice, no source: most joints of a frame have other members to pull on. */
    public static final Restraint USUAL_RESTRAINT = Restraint.MEDIUM;

    /** More than any deposit holds, class H15 and uncontrolled ones included: beyond it a figure is a slip. */
    private static final double MOST_HYDROGEN = 100;

    /** @throws IllegalArgumentException where a figure cannot be */
    public WeldingConditions {
        Given.positive("wall", wall);
        Given.within("dilution", dilution, 0, 1);
        Given.positive("arc energy per length", arcEnergy);
        Given.positive("hydrogen", hydrogen);
        Given.within("hydrogen", hydrogen, 0, MOST_HYDROGEN);
        Given.startTemperature(startTemperature);
    }

    /** EN 1011-2's own heat input, J/m. */
    public double heatInput() {
        return CoolingTime.THERMAL_EFFICIENCY * arcEnergy;
    }
}
