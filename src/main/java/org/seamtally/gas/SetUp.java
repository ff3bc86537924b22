package org.seamtally.gas;

import java.util.OptionalDouble;

/**
 * How the gas gets from the supply to the arc. Equal values are equal set-ups: a key for what is computed from them.
 *
 * @param gas what flows
 * @param flow the setting as the welder reads it, m³/s at the reference state, above 0
 * @param referenceTemperature of the reference state, K
 * @param gasTemperature of the gas in the hose, K
 * @param supplyPressure the supply's static pressure, Pa absolute, above 1 atm
 * @param torchBackPressure what the torch line takes at the set flow, Pa gauge, above 0
 * @param hose between meter and valve
 * @param orificeDiameter m, where an orifice sits between valve and torch line
 * @param meterAt where the meter sits
 * @param nozzleDiameter of the torch's gas nozzle, m
 * @param allowedDrift how far the flow may drift, as a share, before the setting no longer stands; above 0, below 1
 */
public record SetUp(
        GasProperties gas,
        double flow,
        double referenceTemperature,
        double gasTemperature,
        double supplyPressure,
        double torchBackPressure,
        Hose hose,
        OptionalDouble orificeDiameter,
        MeterPlace meterAt,
        double nozzleDiameter,
        double allowedDrift) {

    /** A decision of this project: a drilled short orifice, between sharp-edged (0.6 to 0.85) and rounded (0.95). */
    public static final double ORIFICE_DISCHARGE_COEFFICIENT = 0.80;

    /** A decision of this project: within it no welder would reach for the meter. */
    public static final double USUAL_ALLOWED_DRIFT = 0.05;

    /** @throws IllegalArgumentException where a value cannot be */
    public SetUp {
        java.util.Objects.requireNonNull(gas, "the gas");
        java.util.Objects.requireNonNull(hose, "the hose");
        java.util.Objects.requireNonNull(orificeDiameter, "the orifice");
        java.util.Objects.requireNonNull(meterAt, "the meter's place");
        Refuse.unlessPositive(flow, "the set flow");
        Refuse.unlessPositive(referenceTemperature, "the reference temperature");
        Refuse.unlessPositive(gasTemperature, "the gas temperature");
        Refuse.unlessPositive(supplyPressure - ReferenceState.PRESSURE, "the supply's gauge pressure");
        Refuse.unlessPositive(torchBackPressure, "the torch line's back pressure");
        orificeDiameter.ifPresent(d -> Refuse.unlessPositive(d, "the orifice's diameter"));
        Refuse.unlessPositive(nozzleDiameter, "the nozzle's diameter");
        if (!(allowedDrift > 0 && allowedDrift < 1)) {
            throw new IllegalArgumentException("the allowed drift must lie between 0 and 1, not " + allowedDrift);
        }
    }

    /** The same with another orifice, or with none. */
    public SetUp withOrifice(OptionalDouble diameter) {
        return new SetUp(
                gas,
                flow,
                referenceTemperature,
                gasTemperature,
                supplyPressure,
                torchBackPressure,
                hose,
                diameter,
                meterAt,
                nozzleDiameter,
                allowedDrift);
    }

    /** Density at the reference state, kg/m³. */
    double referenceDensity() {
        return new ReferenceState(referenceTemperature).density(gas);
    }

    /** The set flow, kg/s. */
    double massFlow() {
        return flow * referenceDensity();
    }

    /** Reynolds number in the gas nozzle, 4ṁ/(πDµ), at a flow in kg/s. */
    double nozzleReynolds(double massFlow) {
        return 4 * massFlow / (Math.PI * nozzleDiameter * gas.viscosity());
    }
}
