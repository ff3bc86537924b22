package org.seamtally.gas;

/**
 * Friction of isothermal gas flow in a smooth round hose, the gas's inertia left out:
 * p₁² − p₂² = f·(Δx/d)·(ṁ/A)²·R·T, with Darcy's f = 64/Re below Re 2300 (Hagen and Poiseuille) and 0.3164·Re^(−1/4)
 * above 4000 (Blasius 1913, from memory).
 *
 * <p>Between the two nothing is known but that more pressure gives more flow. A power law of p₁² − p₂² joins them, so
 * that flow stays monotone: a decision of this project.
 *
 * <p>In the number G = f·Re² = (p₁² − p₂²)/Δx·d³/(µ²·R·T) all of it is Re as a function of G, both ways in closed form.
 */
final class HoseFriction {

    static final double LAMINAR_TO = 2300;
    static final double TURBULENT_FROM = 4000;
    private static final double LAMINAR_G = 64 * LAMINAR_TO;
    private static final double TURBULENT_G = 0.3164 * Math.pow(TURBULENT_FROM, 1.75);
    private static final double BETWEEN = Math.log(TURBULENT_FROM / LAMINAR_TO) / Math.log(TURBULENT_G / LAMINAR_G);

    private final double gPerGradient;
    private final double flowPerReynolds;

    HoseFriction(double bore, GasProperties gas, double temperature) {
        gPerGradient = bore * bore * bore / (gas.viscosity() * gas.viscosity() * gas.gasConstant() * temperature);
        flowPerReynolds = Math.PI * bore * gas.viscosity() / 4;
    }

    /**
     * What flows, and how it changes.
     *
     * @param gradient (p₁² − p₂²)/Δx, Pa²/m, of either sign
     * @return mass flow, kg/s, of the same sign, and its derivative by the gradient
     */
    Rate at(double gradient) {
        double g = Math.abs(gradient) * gPerGradient;
        double reynolds;
        double slope;
        if (g <= LAMINAR_G) {
            reynolds = g / 64;
            slope = 1.0 / 64;
        } else {
            boolean turbulent = g >= TURBULENT_G;
            double exponent = turbulent ? 4.0 / 7 : BETWEEN;
            reynolds = turbulent
                    ? TURBULENT_FROM * Math.pow(g / TURBULENT_G, exponent)
                    : LAMINAR_TO * Math.pow(g / LAMINAR_G, exponent);
            slope = exponent * reynolds / g;
        }
        return new Rate(Math.copySign(flowPerReynolds, gradient) * reynolds, flowPerReynolds * gPerGradient * slope);
    }

    /**
     * The gradient that drives a flow.
     *
     * @param massFlow kg/s, at least 0
     * @return (p₁² − p₂²)/Δx, Pa²/m
     */
    double gradientFor(double massFlow) {
        double reynolds = reynolds(massFlow);
        double g;
        if (reynolds <= LAMINAR_TO) {
            g = 64 * reynolds;
        } else if (reynolds >= TURBULENT_FROM) {
            g = 0.3164 * Math.pow(reynolds, 1.75);
        } else {
            g = LAMINAR_G * Math.pow(reynolds / LAMINAR_TO, 1 / BETWEEN);
        }
        return g / gPerGradient;
    }

    /** Reynolds number in the hose, 4ṁ/(πdµ). */
    double reynolds(double massFlow) {
        return massFlow / flowPerReynolds;
    }
}
