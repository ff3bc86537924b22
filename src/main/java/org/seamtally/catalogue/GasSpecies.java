package org.seamtally.catalogue;

/**
 * A pure gas.
 *
 * @param name chemical name, lower case
 * @param molarMass kg/mol
 * @param heatCapacityRatio ideal-gas ratio of heat capacities at room temperature, above 1
 * @param viscosity dynamic viscosity at 20 °C and 1 atm, Pa·s
 * @param source where the figures stand
 * @param status how well that source is known
 */
public record GasSpecies(
        String name, double molarMass, double heatCapacityRatio, double viscosity, String source, Status status) {

    /** @throws IllegalArgumentException where a figure is not that of a gas */
    public GasSpecies {
        if (!(molarMass > 0) || !(heatCapacityRatio > 1) || !(viscosity > 0)) {
            throw new IllegalArgumentException(name + ": molar mass, heat-capacity ratio or viscosity is no gas's");
        }
    }
}
