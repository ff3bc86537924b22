package org.seamtally.gas;

import java.util.Arrays;

/** A set-up's hose as a line, with its valve to open and to shut. */
final class LineOfCells {

    /**
     * How near to the state that repeats itself is near enough, of the pressure that a start takes off: as far below the
     * surge's own accuracy as one may wish.
     */
    private static final double NEAR = 1e-5;

    /**
     * Usual times on and off take three or four rounds, as the hose forgets within seconds. Only times of milliseconds,
     * which no welder works at, take more than this: the last state must do for them, rather than hold a request up.
     */
    private static final int MOST_ROUNDS = 200;

    private final SetUp setUp;
    private final SteadyState steady;
    private final Resolution resolution;
    private final HoseLine hose;
    private final TorchEnd torchEnd;
    private final Course.Scale scale;

    private LineOfCells(SetUp setUp, SteadyState steady, Resolution resolution) {
        this.setUp = setUp;
        this.steady = steady;
        this.resolution = resolution;
        FlowPath path = new FlowPath(setUp);
        double[] positions = resolution.positions(setUp.hose().length());
        hose = new HoseLine(
                setUp.hose(),
                positions,
                lengths(positions),
                path.friction(),
                setUp.supplyPressure(),
                meter(path),
                setUp.gas().gasConstant() * setUp.gasTemperature());
        torchEnd = path.torchEnd();
        scale = new Course.Scale(
                setUp.supplyPressure() - steady.meanPressure(),
                steady.storedGas() * setUp.referenceDensity(),
                setUp.massFlow(),
                resolution.tolerance());
    }

    /**
     * How much hose each node stands for: of each piece between two nodes, where the steady pressures are a and b and p²
     * falls in a straight line, the mean pressure (2/3)·(a² + ab + b²)/(a + b) is that of a share (2a + b)/(3(a + b)) at
     * a and the rest at b. So a line of any number of cells holds exactly what the hose holds, both full and steady, and
     * gives off exactly the stored gas between the two.
     */
    private double[] lengths(double[] positions) {
        int n = positions.length;
        double whole = setUp.hose().length();
        double[] lengths = new double[n];
        if (n == 1) {
            lengths[0] = whole;
        }
        for (int i = 0; i < n - 1; i++) {
            double a = steadyPressure(positions[i] / whole);
            double b = steadyPressure(positions[i + 1] / whole);
            double share = (2 * a + b) / (3 * (a + b));
            double piece = positions[i + 1] - positions[i];
            lengths[i] += piece * share;
            lengths[i + 1] += piece * (1 - share);
        }
        return lengths;
    }

    private double steadyPressure(double share) {
        double inlet = steady.inletPressure();
        double end = steady.endPressure();
        return Math.sqrt(inlet * inlet * (1 - share) + end * end * share);
    }

    /** One cell has one pressure, the valve's: the meter then passes the set flow into that. */
    private Restriction meter(FlowPath path) {
        return resolution.cells() > 1
                ? path.meter()
                : Restriction.passing(
                        setUp.massFlow(),
                        setUp.supplyPressure(),
                        steady.valvePressure(),
                        setUp.gas(),
                        setUp.gasTemperature());
    }

    static LineOfCells of(SetUp setUp, SteadyState steady, Resolution resolution) {
        return new LineOfCells(setUp, steady, resolution);
    }

    /** The same line, its counter at 0. */
    LineOfCells again() {
        return new LineOfCells(setUp, steady, resolution);
    }

    int cells() {
        return hose.cells();
    }

    long balances() {
        return hose.balances();
    }

    /** All at the supply's pressure. */
    double[] full() {
        double[] pressures = new double[hose.cells()];
        Arrays.fill(pressures, setUp.supplyPressure());
        return pressures;
    }

    /** From a state on with the valve open. */
    Course open(double[] start, double until) {
        return Course.follow(hose, torchEnd, start, setUp.massFlow(), scale, until);
    }

    /** From a state on with the valve shut: the meter refills the hose. */
    private Course shut(double[] start, double until) {
        return Course.follow(hose, Outlet.SHUT, start, 0, scale, until);
    }

    /** The start that repeats itself when the valve is open and shut for these times. */
    Course repeat(double onTime, double offTime) {
        double[] start = full();
        double before = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MOST_ROUNDS; i++) {
            double[] next = shut(open(start, onTime).pressures(), offTime).pressures();
            double moved = 0;
            for (int j = 0; j < next.length; j++) {
                moved = Math.max(moved, Math.abs(next[j] - start[j]));
            }
            start = next;
            // what is still to come, where each round moves by the same share of the one before
            double toCome = i > 0 && moved < before ? moved * moved / (before - moved) : moved;
            if (toCome <= NEAR * scale.pressure()) {
                break;
            }
            before = moved;
        }
        return open(start, Double.POSITIVE_INFINITY);
    }

    /** By how much inflow, outflow and the change of a full line's content miss each other, over what flowed out. */
    double defect(Course course) {
        double change = hose.content(course.pressures()) - hose.content(course.start());
        return Math.abs(course.inflow() - course.outflow() - change) / course.outflow();
    }
}
