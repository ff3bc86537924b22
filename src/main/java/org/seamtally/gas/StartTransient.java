package org.seamtally.gas;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What comes out of the torch when the gas valve opens on a filled hose: first far more than the setting, then less and
 * less, until meter and torch pass the same.
 *
 * <p>The hose is a {@link HoseLine}, at first all at the supply's pressure and the meter not flowing. The net start surge
 * is ∫(q_out − q_set)dt. The meter flows less than its setting until the hose's inlet has fallen below the critical
 * ratio, so that the surge is less than the stored gas.
 *
 * <p>Flows and volumes are at the reference state.
 */
public final class StartTransient {

    private final SetUp setUp;
    private final SteadyState steady;
    private final LineOfCells line;
    private final Course course;
    private final long balances;

    private StartTransient(SetUp setUp, SteadyState steady, LineOfCells line, Course course, long balances) {
        this.setUp = setUp;
        this.steady = steady;
        this.line = line;
        this.course = course;
        this.balances = balances;
    }

    /** The start of a set-up on a hose that has filled up. */
    public static StartTransient of(SetUp setUp) {
        SteadyState steady = SteadyState.of(setUp);
        return of(setUp, steady, Resolution.usual(setUp, steady));
    }

    static StartTransient of(SetUp setUp, Resolution resolution) {
        return of(setUp, SteadyState.of(setUp), resolution);
    }

    private static StartTransient of(SetUp setUp, SteadyState steady, Resolution resolution) {
        if (!steady.reachable() || setUp.meterAt() == MeterPlace.MACHINE) {
            return none(setUp, steady);
        }
        LineOfCells line = LineOfCells.of(setUp, steady, resolution);
        Course course = line.open(line.full(), Double.POSITIVE_INFINITY);
        return new StartTransient(setUp, steady, line, course, line.balances());
    }

    /** No surge: nothing is stored, or the gas never shut, or the setting cannot be reached anyway. */
    private static StartTransient none(SetUp setUp, SteadyState steady) {
        return new StartTransient(setUp, steady, null, null, 0);
    }

    /**
     * The start after the valve was shut for a while on the steady state: the meter has refilled the hose in part.
     *
     * @param offTime s, between shutting and opening; 0 or less says that the gas never shut
     */
    public StartTransient afterOff(double offTime) {
        return repeated(Double.POSITIVE_INFINITY, offTime);
    }

    /**
     * A start among many alike, each with the same time on and off: the hose neither fills nor settles fully, and comes
     * to a state that repeats itself.
     *
     * @param onTime s, from opening to shutting the valve, above 0
     * @param offTime s, from shutting to opening; 0 or less says that the gas never shut
     */
    public StartTransient repeated(double onTime, double offTime) {
        if (!(onTime > 0)) {
            throw new IllegalArgumentException("the gas must be on for longer than 0 s, not " + onTime);
        }
        if (Double.isNaN(offTime)) {
            throw new IllegalArgumentException("the time between two starts is no number");
        }
        if (line == null || offTime <= 0) {
            return none(setUp, steady);
        }
        LineOfCells again = line.again();
        return new StartTransient(setUp, steady, again, again.repeat(onTime, offTime), again.balances());
    }

    public SetUp setUp() {
        return setUp;
    }

    public SteadyState steady() {
        return steady;
    }

    /** The highest flow, m³/s at the reference state: the first instant's when the hose was full. */
    public double peakFlow() {
        return course == null ? steady.flow() : volume(course.peak());
    }

    /** Net start surge until the flow is steady, m³ at the reference state. */
    public double netSurge() {
        return netSurge(Double.POSITIVE_INFINITY);
    }

    /**
     * Net start surge within the time that the gas is on.
     *
     * @param onTime s, at least 0: pre-flow, arc and post-flow of that start
     * @return m³ at the reference state
     */
    public double netSurge(double onTime) {
        if (!(onTime >= 0)) {
            throw new IllegalArgumentException("the gas cannot be on for " + onTime + " s");
        }
        return course == null ? 0 : volume(course.excess(onTime));
    }

    /** The time from which the flow stays within 5 % of the setting, s. */
    public double timeWithin5Percent() {
        return timeAbove(1.05 * steady.flow());
    }

    /** The time from which the flow stays within 1 % of the setting, s. */
    public double timeWithin1Percent() {
        return timeAbove(1.01 * steady.flow());
    }

    private double timeAbove(double flow) {
        return course == null ? 0 : course.lastAbove(flow * setUp.referenceDensity());
    }

    /** The greatest Reynolds number in the gas nozzle. */
    public double peakNozzleReynolds() {
        return setUp.nozzleReynolds(peakFlow() * setUp.referenceDensity());
    }

    /**
     * How long, from the start on, the nozzle's Reynolds number stands above 2300, s: laminar flow can no longer be
     * expected there, and air may be drawn into the shield. Empty where the setting itself lies above: it never ends.
     */
    public OptionalDouble turbulentTime() {
        double share = LAMINAR_NOZZLE / steady.nozzleReynolds();
        return share < 1 ? OptionalDouble.empty() : OptionalDouble.of(timeAbove(share * steady.flow()));
    }

    /** The volume that flows in that time, m³ at the reference state; empty where it never ends. */
    public OptionalDouble turbulentVolume() {
        OptionalDouble time = turbulentTime();
        return time.isEmpty()
                ? time
                : OptionalDouble.of(netSurge(time.getAsDouble()) + steady.flow() * time.getAsDouble());
    }

    /** The Reynolds number up to which flow in a round pipe is laminar; fluid mechanics, from memory: 2000 to 2300. */
    public static final double LAMINAR_NOZZLE = 2300;

    /** The flow over time, dense where it changes fast, until within 1 % of the setting. */
    public List<CurvePoint> curve() {
        return course == null
                ? List.of(new CurvePoint(0, steady.flow()))
                : Curve.times(course, timeWithin1Percent())
                        .mapToObj(time -> new CurvePoint(time, volume(course.flow(time))))
                        .toList();
    }

    /**
     * Flow at a time.
     *
     * @param time s from the valve's opening
     * @param flow m³/s at the reference state
     */
    public record CurvePoint(double time, double flow) {}

    /** How many mass balances of one cell it took. */
    public long cellBalances() {
        return balances;
    }

    /** Whether the whole hose was taken as one cell, its own pressure drop being too small to matter. */
    public boolean lumped() {
        return line != null && line.cells() == 1;
    }

    /** Number of cells, 0 where nothing had to be computed. */
    public int cells() {
        return line == null ? 0 : line.cells();
    }

    /** By how much inflow, outflow and the change of content miss each other, as a share of what flowed out. */
    double massDefect() {
        return course == null ? 0 : line.defect(course);
    }

    private double volume(double mass) {
        return mass / setUp.referenceDensity();
    }
}
