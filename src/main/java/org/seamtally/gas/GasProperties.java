package org.seamtally.gas;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.seamtally.catalogue.GasSpecies;
import org.seamtally.catalogue.Gases;
import org.seamtally.catalogue.ShieldingGas;

/**
 * What the flow of a gas, pure or mixed, depends on, as an ideal gas.
 *
 * <p>Argon's real critical flow factor is 0.06 % above the ideal one at 1 atm, 0.3 % at 5 bar and 1.2 % at 20 bar
 * (computed from the equation of state of Tegeler, Span and Wagner 1999): far below what is known of a torch line.
 *
 * @param gasConstant specific gas constant, J/(kg·K)
 * @param heatCapacityRatio γ, above 1
 * @param viscosity dynamic viscosity, Pa·s; as the catalogue has it, at 20 °C, where gas in a shop's hose is
 */
public record GasProperties(double gasConstant, double heatCapacityRatio, double viscosity) {

    /** Molar gas constant, J/(mol·K): exact in the SI since 2019 (CODATA 2018). */
    static final double MOLAR_GAS_CONSTANT = 8.314462618;

    // each joint's set-up asks for its gas
    private static final Map<ShieldingGas, GasProperties> OF_CATALOGUE =
            Gases.all().stream().collect(Collectors.toUnmodifiableMap(Function.identity(), GasProperties::mixed));

    /** @throws IllegalArgumentException where a figure is not that of a gas */
    public GasProperties {
        Refuse.unlessPositive(gasConstant, "the gas constant");
        Refuse.unlessPositive(viscosity, "the viscosity");
        Refuse.unlessPositive(heatCapacityRatio - 1, "the heat-capacity ratio less 1");
    }

    /** The properties of a gas as it is bought. */
    public static GasProperties of(ShieldingGas gas) {
        GasProperties known = OF_CATALOGUE.get(gas);
        return known != null ? known : mixed(gas);
    }

    private static GasProperties mixed(ShieldingGas gas) {
        double molarMass = 0;
        double heatCapacity = 0;
        for (ShieldingGas.Part part : gas.parts()) {
            double ratio = part.gas().heatCapacityRatio();
            molarMass += part.moleFraction() * part.gas().molarMass();
            // molar heat capacities add by mole fraction: c_p/R = γ/(γ − 1)
            heatCapacity += part.moleFraction() * ratio / (ratio - 1);
        }
        return new GasProperties(
                MOLAR_GAS_CONSTANT / molarMass, heatCapacity / (heatCapacity - 1), wilkeViscosity(gas.parts()));
    }

    /**
     * Viscosity of a mixture: C. R. Wilke, J. Chem. Phys. 18 (1950) 517, equations 13 and 14 (from memory).
     *
     * @return Pa·s
     */
    private static double wilkeViscosity(List<ShieldingGas.Part> parts) {
        double viscosity = 0;
        for (ShieldingGas.Part part : parts) {
            double hindrance = 0;
            for (ShieldingGas.Part other : parts) {
                hindrance += other.moleFraction() * wilkeFactor(part.gas(), other.gas());
            }
            viscosity += part.moleFraction() * part.gas().viscosity() / hindrance;
        }
        return viscosity;
    }

    private static double wilkeFactor(GasSpecies i, GasSpecies j) {
        double root = 1 + Math.sqrt(i.viscosity() / j.viscosity() * Math.sqrt(j.molarMass() / i.molarMass()));
        return root * root / Math.sqrt(8 * (1 + i.molarMass() / j.molarMass()));
    }

    /**
     * The ratio of pressures at and below which a nozzle is choked: (2/(γ+1))^(γ/(γ−1)), 0.487 for argon.
     *
     * @return downstream over upstream absolute pressure, between 0 and 1
     */
    public double criticalPressureRatio() {
        return Math.pow(2 / (heatCapacityRatio + 1), heatCapacityRatio / (heatCapacityRatio - 1));
    }

    /**
     * The critical flow factor C* of ISO 9300 for an ideal gas: ṁ = A·C_d·C*·p₁/√(RT), with
     * C* = √γ·(2/(γ+1))^((γ+1)/(2(γ−1))); 0.726184 for γ = 5/3.
     */
    public double criticalFlowFactor() {
        double g = heatCapacityRatio;
        return Math.sqrt(g) * Math.pow(2 / (g + 1), (g + 1) / (2 * (g - 1)));
    }
}
