package org.seamtally.gas;

/**
 * The flow factor ψ of an ideal nozzle, ṁ = C_d·A·p₁·ψ(p₂/p₁)/√(RT): isentropic flow of an ideal gas (Saint-Venant and
 * Wantzel; ISO 9300 where choked). The one flow law of meter, orifice and torch line.
 *
 * <p>Near equal pressures the isentropic law rises as the square root of the difference, with infinite slope. Real flow
 * is laminar there. As in ISO 6358-1:2013 (from memory: a straight line above a ratio of 0.995 to 0.999) the law goes
 * over to a straight line above 0.999, the narrowest patch named there.
 */
final class NozzleFlow {

    /** Above this ratio of pressures the flow is linear in the difference: ISO 6358-1:2013, from memory. */
    static final double LAMINAR_ABOVE = 0.999;

    private final double ratio;
    private final double criticalRatio;
    private final double criticalFactor;
    private final double laminarSlope;

    NozzleFlow(GasProperties gas) {
        ratio = gas.heatCapacityRatio();
        criticalRatio = gas.criticalPressureRatio();
        criticalFactor = gas.criticalFlowFactor();
        laminarSlope = -isentropic(LAMINAR_ABOVE).value() / (1 - LAMINAR_ABOVE);
    }

    /**
     * The flow factor and its slope.
     *
     * @param r downstream over upstream absolute pressure; a little above 1 the straight line goes on, into back flow,
     *     so that a solver may try such a state
     * @return ψ, and dψ/dr
     */
    Rate at(double r) {
        if (r <= criticalRatio) {
            return new Rate(criticalFactor, 0);
        }
        if (r > LAMINAR_ABOVE) {
            return new Rate(laminarSlope * (r - 1), laminarSlope);
        }
        return isentropic(r);
    }

    /** ψ² = 2γ/(γ−1)·(r^(2/γ) − r^((γ+1)/γ)), with a = r^(1/γ). */
    private Rate isentropic(double r) {
        double a = Math.pow(r, 1 / ratio);
        double factor = Math.sqrt(2 * ratio / (ratio - 1) * a * (a - r));
        return new Rate(factor, (2 * a * a / r - (ratio + 1) * a) / ((ratio - 1) * factor));
    }

    double criticalRatio() {
        return criticalRatio;
    }

    double criticalFactor() {
        return criticalFactor;
    }
}
