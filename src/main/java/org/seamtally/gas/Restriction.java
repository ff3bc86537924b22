package org.seamtally.gas;

/**
 * A restriction in the gas's way, taken as one ideal nozzle: the meter's needle, an orifice, the torch line.
 *
 * <p>ṁ = C_d·A·p₁·ψ(p₂/p₁)/√(RT), with ψ of {@link NozzleFlow}.
 */
final class Restriction {

    private final NozzleFlow law;
    private final double conductance;

    /**
     * @param effectiveArea C_d·A, m², at least 0; 0 is shut
     * @param gas what flows
     * @param temperature K, upstream
     */
    Restriction(double effectiveArea, GasProperties gas, double temperature) {
        Refuse.unlessNotNegative(effectiveArea, "the area of a restriction");
        law = new NozzleFlow(gas);
        conductance = effectiveArea / Math.sqrt(gas.gasConstant() * temperature);
    }

    /**
     * The restriction that passes a flow between two pressures.
     *
     * @param massFlow kg/s
     * @param upstream Pa
     * @param downstream Pa, below upstream
     */
    static Restriction passing(
            double massFlow, double upstream, double downstream, GasProperties gas, double temperature) {
        if (!(downstream < upstream)) {
            throw new IllegalArgumentException("nothing flows from " + upstream + " Pa into " + downstream + " Pa");
        }
        double factor = new NozzleFlow(gas).at(downstream / upstream).value();
        return new Restriction(
                massFlow * Math.sqrt(gas.gasConstant() * temperature) / (upstream * factor), gas, temperature);
    }

    /**
     * What flows, and how it changes with either pressure.
     *
     * @param upstream Pa
     * @param downstream Pa
     */
    Flow at(double upstream, double downstream) {
        double r = downstream / upstream;
        Rate factor = law.at(r);
        return new Flow(
                conductance * upstream * factor.value(),
                conductance * (factor.value() - r * factor.slope()),
                conductance * factor.slope());
    }

    /**
     * The pressure before it that drives a flow.
     *
     * @param massFlow kg/s, at least 0
     * @param downstream Pa
     * @return Pa, at least the downstream pressure
     */
    double upstreamFor(double massFlow, double downstream) {
        return downstream / law.ratioFor(massFlow / (conductance * downstream));
    }

    /**
     * A flow through a restriction.
     *
     * @param massFlow kg/s
     * @param byUpstream its derivative by the upstream pressure, kg/(s·Pa), above 0
     * @param byDownstream its derivative by the downstream pressure, kg/(s·Pa), at most 0
     */
    record Flow(double massFlow, double byUpstream, double byDownstream) {}
}
