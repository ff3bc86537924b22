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
        laminarSlope = -isentropic(LAMINAR_ABOVE, root(LAMINAR_ABOVE)) / (1 - LAMINAR_ABOVE);
    }

    /**
     * The flow factor and its slope.
     *
     * @param r downstream over upstream absolute pressure; a little above 1 the straight line goes on, into back flow,
     *     so that a solver may try such a state
     * @return ψ, and dψ/dr
     */
    Rate at(double r) {
        double factor;
        double slope;
        if (r <= criticalRatio) {
            factor = criticalFactor;
            slope = 0;
        } else if (r > LAMINAR_ABOVE) {
            factor = laminarSlope * (r - 1);
            slope = laminarSlope;
        } else {
            double a = root(r);
            factor = isentropic(r, a);
            slope = (2 * a * a / r - (ratio + 1) * a) / ((ratio - 1) * factor);
        }
        return new Rate(factor, slope);
    }

    /**
     * The ratio at which ψ(r)/r has a value: what a flow asks for where the pressure downstream is known. Where the law is
     * isentropic, ψ²/r² = 2γ/(γ−1)·(u² − u) with u = r^((1−γ)/γ).
     *
     * @param value ψ/r, at least 0
     * @return r, at most 1
     */
    double ratioFor(double value) {
        if (value * criticalRatio >= criticalFactor) {
            return criticalFactor / value;
        }
        double laminar = laminarSlope / (laminarSlope - value);
        if (laminar > LAMINAR_ABOVE) {
            return laminar;
        }
        double u = (1 + Math.sqrt(1 + 2 * (ratio - 1) / ratio * value * value)) / 2;
        return Math.pow(u, ratio / (1 - ratio));
    }

    private double root(double r) {
        return Math.pow(r, 1 / ratio);
    }

    /** ψ² = 2γ/(γ−1)·(r^(2/γ) − r^((γ+1)/γ)), with a = r^(1/γ). */
    private double isentropic(double r, double a) {
        return Math.sqrt(2 * ratio / (ratio - 1) * a * (a - r));
    }
}
