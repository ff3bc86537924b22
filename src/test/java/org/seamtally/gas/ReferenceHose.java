package org.seamtally.gas;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BisectionSolver;

/**
 * The start of a set-up computed apart from the project's own way, on a fine grid: pressures at cell centres with half
 * cells of friction at both ends, a diagonally implicit method of two stages (SDIRK2, L-stable: Alexander 1977) on steps
 * that grow by a fixed ratio, Newton with a Jacobian by differences, nozzles by the Mach number, laminar friction by
 * Hagen and Poiseuille's closed form, and a laminar patch a hundred times narrower.
 */
final class ReferenceHose {

    private static final double GAMMA = 1 - Math.sqrt(0.5);
    private static final double PATCH = 0.99999;
    private static final double AIR = 101_325;

    private final SetUp setUp;
    private final double rt;
    private final double k;
    private final int cells;
    private final double dx;
    private final double setFlow;
    private final double meterArea;
    private final double torchArea;
    private final double orificeArea;
    private final double[] outletPressure = new double[3000];
    private final double[] outletFlow = new double[3000];

    double net;
    double peak;
    double within5;

    ReferenceHose(SetUp setUp, int cells) {
        this.setUp = setUp;
        this.cells = cells;
        rt = setUp.gas().gasConstant() * setUp.gasTemperature();
        k = setUp.gas().heatCapacityRatio();
        dx = setUp.hose().length() / cells;
        setFlow = setUp.flow() * AIR / (setUp.gas().gasConstant() * setUp.referenceTemperature());
        double torchPressure = AIR + setUp.torchBackPressure();
        torchArea = setFlow / nozzle(1, torchPressure, AIR);
        double d = setUp.orificeDiameter().orElse(0);
        orificeArea = 0.80 * Math.PI * d * d / 4;
        tabulateOutlet();
        double valve =
                d == 0 ? torchPressure : rising(p -> nozzle(orificeArea, p, torchPressure), setFlow, torchPressure);
        double length = setUp.hose().length();
        double inlet = rising(p -> friction(p, valve, length), setFlow, valve);
        meterArea = setFlow / nozzle(1, setUp.supplyPressure(), inlet);
        run();
    }

    /** Isentropic flow by the Mach number in the throat. */
    private double nozzle(double area, double up, double down) {
        double r = down / up;
        if (r > PATCH) {
            return nozzle(area, 1, PATCH) * up * (1 - r) / (1 - PATCH);
        }
        double mach = Math.min(1, Math.sqrt(2 / (k - 1) * (Math.pow(r, -(k - 1) / k) - 1)));
        return area * up * Math.sqrt(k / rt) * mach * Math.pow(1 + (k - 1) / 2 * mach * mach, -(k + 1) / (2 * (k - 1)));
    }

    private double friction(double up, double down, double length) {
        double d = setUp.hose().insideDiameter();
        double mu = setUp.gas().viscosity();
        double squares = up * up - down * down;
        double sign = Math.signum(squares);
        double s = Math.abs(squares) / length;
        double perRe = Math.PI * d * mu / 4;
        double laminar = Math.PI * Math.pow(d, 4) * s / (256 * mu * rt);
        if (laminar <= 2300 * perRe) {
            return sign * laminar;
        }
        // Blasius: s = 0.3164 (mu pi d/4)^(1/4) m^(7/4) rt / (d A^2)
        double area = Math.PI * d * d / 4;
        double blasius = Math.pow(s * d * area * area / (0.3164 * Math.pow(perRe, 0.25) * rt), 4.0 / 7);
        if (blasius >= 4000 * perRe) {
            return sign * blasius;
        }
        double sLow = 2300 * perRe * 256 * mu * rt / (Math.PI * Math.pow(d, 4));
        double sHigh = Math.pow(4000 * perRe, 1.75) * 0.3164 * Math.pow(perRe, 0.25) * rt / (d * area * area);
        double share = Math.log(s / sLow) / Math.log(sHigh / sLow);
        return sign * perRe * Math.exp((1 - share) * Math.log(2300) + share * Math.log(4000));
    }

    private static double rising(DoubleUnaryOperator flow, double wanted, double from) {
        double to = 2 * from;
        while (flow.applyAsDouble(to) < wanted) {
            to *= 2;
        }
        return new BisectionSolver(1e-14, 1e-9).solve(300, p -> flow.applyAsDouble(p) - wanted, from, to);
    }

    private void tabulateOutlet() {
        for (int i = 0; i < outletPressure.length; i++) {
            double share = (double) i / (outletPressure.length - 1);
            double p = AIR + (setUp.supplyPressure() - AIR) * share * share;
            outletPressure[i] = p;
            outletFlow[i] = i == 0 ? 0 : nozzle(torchArea, behind(p), AIR);
        }
    }

    private double behind(double p) {
        return orificeArea == 0
                ? p
                : new BisectionSolver(1e-14, 1e-9)
                        .solve(300, b -> nozzle(orificeArea, p, b) - nozzle(torchArea, b, AIR), AIR, p);
    }

    private double outlet(double p) {
        int at = Arrays.binarySearch(outletPressure, p);
        int i = Math.min(Math.max(at >= 0 ? at : -at - 2, 0), outletPressure.length - 2);
        double share = (p - outletPressure[i]) / (outletPressure[i + 1] - outletPressure[i]);
        return outletFlow[i] + share * (outletFlow[i + 1] - outletFlow[i]);
    }

    private double inflow(double first) {
        double low = first;
        double high = setUp.supplyPressure();
        if (low >= high) {
            return 0;
        }
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (nozzle(meterArea, setUp.supplyPressure(), middle) > friction(middle, first, dx / 2)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return friction(high, first, dx / 2);
    }

    private double outflow(double last) {
        double low = AIR;
        double high = last;
        for (int i = 0; i < 50; i++) {
            double middle = (low + high) / 2;
            if (friction(last, middle, dx / 2) > outlet(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return outlet(low);
    }

    private double[] rates(double[] p) {
        double factor = rt / (setUp.hose().area() * dx);
        double[] rates = new double[cells];
        double in = inflow(p[0]);
        for (int i = 0; i < cells; i++) {
            double out = i < cells - 1 ? friction(p[i], p[i + 1], dx) : outflow(p[i]);
            rates[i] = (in - out) * factor;
            in = out;
        }
        return rates;
    }

    /** Solves x = base + h·rates(x), in place; whether it has come to rest. */
    private boolean implicit(double[] x, double[] base, double h) {
        for (int iteration = 0; iteration < 60; iteration++) {
            double[] f = rates(x);
            double[] low = new double[cells];
            double[] middle = new double[cells];
            double[] high = new double[cells];
            for (int colour = 0; colour < 3; colour++) {
                double[] moved = x.clone();
                for (int i = colour; i < cells; i += 3) {
                    moved[i] -= 1e-7 * x[i];
                }
                double[] g = rates(moved);
                for (int i = colour; i < cells; i += 3) {
                    double step = -1e-7 * x[i];
                    middle[i] = 1 - h * (g[i] - f[i]) / step;
                    if (i > 0) {
                        high[i - 1] = -h * (g[i - 1] - f[i - 1]) / step;
                    }
                    if (i < cells - 1) {
                        low[i + 1] = -h * (g[i + 1] - f[i + 1]) / step;
                    }
                }
            }
            double[] right = new double[cells];
            for (int i = 0; i < cells; i++) {
                right[i] = base[i] + h * f[i] - x[i];
            }
            for (int i = 1; i < cells; i++) {
                double m = low[i] / middle[i - 1];
                middle[i] -= m * high[i - 1];
                right[i] -= m * right[i - 1];
            }
            double most = 0;
            for (int i = cells - 1; i >= 0; i--) {
                right[i] = (right[i] - (i < cells - 1 ? high[i] * right[i + 1] : 0)) / middle[i];
                // where it jumps to and fro over a kink of the friction law, half a step settles it
                x[i] = Math.min(x[i] + (iteration < 6 ? 1 : 0.5) * right[i], setUp.supplyPressure());
                most = Math.max(most, Math.abs(right[i]) / x[i]);
            }
            if (most < 1e-8) {
                return true;
            }
        }
        return false;
    }

    private void run() {
        double[] p = new double[cells];
        Arrays.fill(p, setUp.supplyPressure());
        peak = outlet(setUp.supplyPressure());
        double h = 1e-6 * setUp.supplyPressure() / Math.abs(rates(p)[cells - 1]);
        double time = 0;
        double flow = outflow(p[cells - 1]);
        double before = peak;
        double timeBefore = 0;
        double excess = 0;
        int tries = 0;
        while (Math.abs(flow - setFlow) > 2e-5 * setFlow || Math.abs(inflow(p[0]) - setFlow) > 2e-5 * setFlow) {
            if (++tries > 5000) {
                throw new IllegalStateException("lost at " + time + " s, step " + h + " s, of " + setUp);
            }
            double[] x1 = p.clone();
            boolean good = implicit(x1, p, h * GAMMA);
            double[] x2 = x1.clone();
            if (good) {
                double[] base = new double[cells];
                for (int i = 0; i < cells; i++) {
                    base[i] = p[i] + (1 - GAMMA) / GAMMA * (x1[i] - p[i]);
                }
                good = implicit(x2, base, h * GAMMA);
            }
            if (!good) {
                h /= 4;
                if (h < 1e-15) {
                    throw new IllegalStateException("the reference is lost at " + time + " s of " + setUp);
                }
                continue;
            }
            excess += h * ((1 - GAMMA) * outflow(x1[cells - 1]) + GAMMA * outflow(x2[cells - 1]) - setFlow);
            p = x2;
            time += h;
            flow = outflow(p[cells - 1]);
            if (flow < 1.05 * setFlow && before >= 1.05 * setFlow) {
                within5 = timeBefore + (time - timeBefore) * (before - 1.05 * setFlow) / (before - flow);
            }
            before = flow;
            timeBefore = time;
            h *= 1.04;
        }
        double density = AIR / (setUp.gas().gasConstant() * setUp.referenceTemperature());
        net = excess / density;
        peak /= density;
    }
}
