package org.seamtally.gas;

/**
 * One step of a linearly implicit method for a {@link HoseLine}: RODAS3, four stages, order 3 with an embedded solution
 * of order 2, stiffly accurate and L-stable (Sandu, Verwer, Blom, Spee, Carmichael and Potra, Atmos. Environ. 31 (1997)
 * 3459, from memory), in the form without products by the Jacobian:
 * (1/(hγ) − J)·K_i = f(y + Σa_ij·K_j) + Σc_ij/h·K_j.
 *
 * <p>The line is stiff: a short cell settles within microseconds, the hose within seconds. An explicit method would
 * take millions of steps. The method keeps linear invariants, so that inflow, outflow and content balance but for
 * rounding; both flows' integrals are carried along as two more unknowns that nothing depends on.
 */
final class Rodas3 {

    private static final double GAMMA = 0.5;
    private static final double[][] C = {{}, {4}, {1, -1}, {1, -1, -8.0 / 3}};
    private static final double A1 = 2;

    private final HoseLine line;
    private final Outlet outlet;
    private final int n;
    private final HoseLine.Balance first;
    private final HoseLine.Balance later;
    private final double[][] k = new double[4][];
    private final double[] kIn = new double[4];
    private final double[] kOut = new double[4];
    private final double[] stage;
    /** Of the pivots: a product for each cell instead of a quotient that the next has to wait for. */
    private final double[] inverses;

    private final double[] lower;
    private final double[] upper;

    Rodas3(HoseLine line, Outlet outlet) {
        this.line = line;
        this.outlet = outlet;
        n = line.cells();
        first = new HoseLine.Balance(n);
        later = new HoseLine.Balance(n);
        for (int i = 0; i < k.length; i++) {
            k[i] = new double[n];
        }
        stage = new double[n];
        inverses = new double[n];
        lower = new double[n];
        upper = new double[n];
    }

    /** Reads the state that the next step starts from: rates and flows at it. */
    HoseLine.Balance startFrom(double[] pressures) {
        line.balance(pressures, outlet, first, true);
        return first;
    }

    /**
     * Tries a step from the state last given to {@link #startFrom}.
     *
     * @param pressures that state, left as it is
     * @param h s
     * @param into the pressures after it, Pa
     * @return what came in and went out, and the error estimates
     */
    Step step(double[] pressures, double h, double[] into) {
        factor(h);
        solve(0, h, first);
        // the second stage stands where the first does: no new balance
        solve(1, h, first);
        for (int i = 0; i < n; i++) {
            stage[i] = pressures[i] + A1 * k[0][i];
        }
        line.balance(stage, outlet, later, false);
        solve(2, h, later);
        for (int i = 0; i < n; i++) {
            into[i] = stage[i] + k[2][i];
        }
        line.balance(into, outlet, later, false);
        solve(3, h, later);
        double error = 0;
        for (int i = 0; i < n; i++) {
            into[i] += k[3][i];
            // written so that NaN comes through
            error = Math.abs(k[3][i]) <= error ? error : Math.abs(k[3][i]);
        }
        return new Step(A1 * kIn[0] + kIn[2] + kIn[3], A1 * kOut[0] + kOut[2] + kOut[3], error, Math.abs(kOut[3]));
    }

    /**
     * What a step did.
     *
     * @param inflow kg
     * @param outflow kg
     * @param pressureError the greatest of the cells', Pa
     * @param outflowError kg
     */
    record Step(double inflow, double outflow, double pressureError, double outflowError) {}

    /** Elimination without exchange: 1/(hγ) − J is an M-matrix, as each flow falls with the pressure it runs into. */
    private void factor(double h) {
        double unit = 1 / (h * GAMMA);
        double eliminated = 0;
        for (int i = 0; i < n; i++) {
            inverses[i] = 1 / (unit - first.diagonal[i] - eliminated);
            upper[i] = first.above[i] * inverses[i];
            if (i < n - 1) {
                lower[i + 1] = first.below[i] * inverses[i];
                eliminated = lower[i + 1] * first.above[i];
            }
        }
    }

    private void solve(int which, double h, HoseLine.Balance at) {
        double[] x = k[which];
        System.arraycopy(at.rates, 0, x, 0, n);
        double in = at.inflow;
        double out = at.outflow;
        for (int j = 0; j < which; j++) {
            double c = C[which][j] / h;
            double[] earlier = k[j];
            for (int i = 0; i < n; i++) {
                x[i] += c * earlier[i];
            }
            in += c * kIn[j];
            out += c * kOut[j];
        }
        double before = 0;
        for (int i = 0; i < n; i++) {
            before = x[i] + lower[i] * before;
            x[i] = before * inverses[i];
        }
        double after = 0;
        for (int i = n - 1; i >= 0; i--) {
            after = x[i] + upper[i] * after;
            x[i] = after;
        }
        kIn[which] = h * GAMMA * (in + first.inflowSlope * x[0]);
        kOut[which] = h * GAMMA * (out + first.outflowSlope * x[n - 1]);
    }
}
