package org.seamtally.gas;

import java.util.Arrays;

/**
 * How a line's flow goes from a state on, step by step, until it is steady or a time is up.
 *
 * <p>Between the steps the excess over the set flow is the cubic through its values and slopes (the slope is the flow),
 * and the flow is the cubic through its own.
 */
final class Course {

    /**
     * Steady is where both ends' flows are within this share of the set flow. What comes after is a dying exponential:
     * some 1e-5 of the surge.
     */
    private static final double STEADY = 1e-5;

    /**
     * A step changes at most by this: beyond, the error estimate of the last step says nothing of the next. Steps
     * then grow from microseconds to seconds within ten.
     */
    private static final double MOST_GROWTH = 5;

    private static final double LEAST_GROWTH = 0.2;

    /** The usual reserve, so that a step chosen is seldom refused. */
    private static final double RESERVE = 0.9;

    /** The usual start takes some eighty steps, the worst that were seen some three hundred. */
    private static final int MOST_STEPS = 10_000;

    /**
     * Where friction is next to nothing, cells can swing to and fro within the tolerance, and hold the steps down, for
     * friction's slope changes within the swing: seen in one of some thousands of set-ups drawn at random. A finer
     * tolerance ends it.
     */
    private static final double FINER = 0.01;

    private static final int MOST_ATTEMPTS = 3;

    private double[] times = new double[64];
    private double[] excesses = new double[64];
    private double[] flows = new double[64];
    private double[] slopes = new double[64];
    private int size;
    private double[] start;
    private double[] pressures;
    private double inflow;
    private double outflow;

    private final double target;

    private Course(double target) {
        this.target = target;
    }

    /**
     * Follows a line.
     *
     * @param start the cells' pressures, Pa
     * @param target what both ends' flows come to, kg/s
     * @param scale what errors are measured against
     * @param until s, may be infinite: then until steady
     * @throws UnsteadyException where it does not come to an end
     */
    static Course follow(HoseLine line, Outlet outlet, double[] start, double target, Scale scale, double until) {
        Scale tried = scale;
        for (int i = 0; i < MOST_ATTEMPTS; i++) {
            Course course = new Course(target);
            course.start = start.clone();
            if (course.run(line, outlet, start.clone(), tried, until)) {
                return course;
            }
            tried = new Scale(scale.pressure(), scale.mass(), scale.flow(), tried.tolerance() * FINER);
        }
        throw new UnsteadyException();
    }

    /**
     * What errors are measured against.
     *
     * @param pressure Pa: the pressure that the start takes off
     * @param mass kg: what the start throws away at most
     * @param flow kg/s: at which flows are told apart
     * @param tolerance the share of these that a step may be off
     */
    record Scale(double pressure, double mass, double flow, double tolerance) {}

    /** Whether it came to an end. */
    private boolean run(HoseLine line, Outlet outlet, double[] state, Scale scale, double until) {
        Rodas3 method = new Rodas3(line, outlet);
        double[] next = new double[state.length];
        HoseLine.Balance at = method.startFrom(state);
        double time = 0;
        double h = firstStep(at, scale);
        note(0, at);
        for (int steps = 0; !steady(at, scale) && time < until; ) {
            if (++steps > MOST_STEPS) {
                return false;
            }
            boolean last = time + h >= until;
            double tried = last ? until - time : h;
            Rodas3.Step step = method.step(state, tried, next);
            double error = Math.max(step.pressureError() / scale.pressure(), step.outflowError() / scale.mass())
                    / scale.tolerance();
            // NaN counts as refused: a stage has left what can be
            if (error <= 1) {
                time = last ? until : time + tried;
                inflow += step.inflow();
                outflow += step.outflow();
                double[] swap = state;
                state = next;
                next = swap;
                at = method.startFrom(state);
                note(time, at);
            }
            double growth = RESERVE / Math.cbrt(error);
            h = tried * (growth >= LEAST_GROWTH ? Math.min(growth, MOST_GROWTH) : LEAST_GROWTH);
        }
        pressures = state;
        // kept for as long as the transient is: without the spare room
        times = Arrays.copyOf(times, size);
        excesses = Arrays.copyOf(excesses, size);
        flows = Arrays.copyOf(flows, size);
        slopes = Arrays.copyOf(slopes, size);
        return true;
    }

    /** A hundredth of the time in which the fastest cell would lose all: the method takes it from there. */
    private static double firstStep(HoseLine.Balance at, Scale scale) {
        double fastest = 0;
        for (double rate : at.rates) {
            fastest = Math.max(fastest, Math.abs(rate));
        }
        return 0.01 * scale.pressure() / fastest;
    }

    private boolean steady(HoseLine.Balance at, Scale scale) {
        return Math.abs(at.outflow - target) <= STEADY * scale.flow()
                && Math.abs(at.inflow - target) <= STEADY * scale.flow();
    }

    private void note(double time, HoseLine.Balance at) {
        if (size == times.length) {
            times = Arrays.copyOf(times, 2 * size);
            excesses = Arrays.copyOf(excesses, 2 * size);
            flows = Arrays.copyOf(flows, 2 * size);
            slopes = Arrays.copyOf(slopes, 2 * size);
        }
        times[size] = time;
        excesses[size] = outflow - target * time;
        flows[size] = at.outflow;
        slopes[size] = at.outflowSlope * at.rates[at.rates.length - 1];
        size++;
    }

    /** The time at which it was steady, or was up, s. */
    double end() {
        return times[size - 1];
    }

    /** The cells' pressures at the start, Pa. */
    double[] start() {
        return start.clone();
    }

    /** The cells' pressures at the end, Pa. */
    double[] pressures() {
        return pressures.clone();
    }

    /** What came in until the end, kg. */
    double inflow() {
        return inflow;
    }

    /** What went out until the end, kg. */
    double outflow() {
        return outflow;
    }

    double peak() {
        double peak = 0;
        for (int i = 0; i < size; i++) {
            peak = Math.max(peak, flows[i]);
        }
        return peak;
    }

    /** What has gone out above the target until a time, kg; what it was at the end for any time after. */
    double excess(double time) {
        int i = before(time);
        if (i == size - 1) {
            return excesses[i];
        }
        double h = times[i + 1] - times[i];
        return cubic(
                excesses[i],
                (flows[i] - target) * h,
                excesses[i + 1],
                (flows[i + 1] - target) * h,
                (time - times[i]) / h);
    }

    /** The flow out at a time, kg/s; what it was at the end for any time after. */
    double flow(double time) {
        int i = before(time);
        if (i == size - 1) {
            return flows[i];
        }
        double h = times[i + 1] - times[i];
        return cubic(flows[i], slopes[i] * h, flows[i + 1], slopes[i + 1] * h, (time - times[i]) / h);
    }

    /**
     * The last time at which the flow falls through a level.
     *
     * @param level kg/s
     * @return s; 0 where the flow never stands above it
     */
    double lastAbove(double level) {
        for (int i = size - 1; i >= 0; i--) {
            if (flows[i] > level) {
                return i == size - 1 ? times[i] : Bracketed.root(time -> flow(time) - level, times[i], times[i + 1]);
            }
        }
        return 0;
    }

    /** The last step that starts at or before a time; the end where the time is later. */
    private int before(double time) {
        int found = Arrays.binarySearch(times, 0, size, time);
        return found >= 0 ? found : Math.max(-found - 2, 0);
    }

    /** Hermite's cubic through values and slopes (per step) at both ends, at a share of the step. */
    private static double cubic(double a, double slopeA, double b, double slopeB, double at) {
        double rest = 1 - at;
        return rest * rest * ((1 + 2 * at) * a + at * slopeA) + at * at * ((3 - 2 * at) * b - rest * slopeB);
    }
}
