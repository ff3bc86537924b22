package org.seamtally.gas;

/**
 * The state at which volumes and flows of gas are counted: one standard atmosphere and a temperature, for the trade's
 * standard cubic foot 70 °F (CGA P-6, from memory).
 *
 * @param temperature K, above 0
 */
public record ReferenceState(double temperature) {

    /** The standard atmosphere, Pa: exact by definition (10th CGPM, 1954). */
    public static final double PRESSURE = 101_325;

    /** @throws IllegalArgumentException where the temperature is not above 0 */
    public ReferenceState {
        Refuse.unlessPositive(temperature, "the reference temperature");
    }

    /**
     * Ideal-gas density, p/(R·T).
     *
     * @return kg/m³
     */
    public double density(GasProperties gas) {
        return PRESSURE / (gas.gasConstant() * temperature);
    }
}
