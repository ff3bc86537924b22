package org.seamtally.gas;

/**
 * The hose as a line of cells: each cell's mass balance dm/dt = ṁ_in − ṁ_out, isothermal, so that
 * dp/dt = (ṁ_in − ṁ_out)·R·T/V, with friction between neighbours, the meter before the first and an outlet behind the
 * last.
 *
 * <p>The cells' pressures stand at nodes, the first at the inlet and the last at the valve, so that the first instant's
 * flow is that of the supply's pressure, and p² falls along the line just as in {@link HoseFriction}: the steady state
 * is exact on any number of cells.
 */
final class HoseLine {

    private final double[] perMass;
    private final double[] perLength;
    private final double supplyPressure;
    private final Restriction meter;
    private final HoseFriction friction;
    private final double[] volumes;
    private final double contentFactor;
    private long balances;

    /**
     * @param positions of the nodes, m from the inlet, rising from 0 to the hose's length; a single 0 makes the whole
     *     hose one cell
     * @param lengths of hose that each node stands for, m; together the hose's length
     * @param supplyPressure Pa, before the meter
     * @param meter with area 0 where nothing comes in
     */
    HoseLine(
            Hose hose,
            double[] positions,
            double[] lengths,
            HoseFriction friction,
            double supplyPressure,
            Restriction meter,
            double gasConstantTimesTemperature) {
        int n = positions.length;
        this.supplyPressure = supplyPressure;
        this.meter = meter;
        this.friction = friction;
        volumes = new double[n];
        perMass = new double[n];
        perLength = new double[n - 1];
        contentFactor = 1 / gasConstantTimesTemperature;
        for (int i = 0; i < n; i++) {
            volumes[i] = hose.area() * lengths[i];
            perMass[i] = gasConstantTimesTemperature / volumes[i];
            if (i < n - 1) {
                perLength[i] = 1 / (positions[i + 1] - positions[i]);
            }
        }
    }

    int cells() {
        return perMass.length;
    }

    /** How many mass balances of one cell have been computed: the measure of the work. */
    long balances() {
        return balances;
    }

    /** What the line holds, kg. */
    double content(double[] pressures) {
        double content = 0;
        for (int i = 0; i < pressures.length; i++) {
            content += pressures[i] * volumes[i] * contentFactor;
        }
        return content;
    }

    /** The balances' right-hand sides and, where asked for, their derivatives. */
    void balance(double[] pressures, Outlet outlet, Balance into, boolean withSlopes) {
        int n = pressures.length;
        balances += n;
        Restriction.Flow in = meter.at(supplyPressure, pressures[0]);
        Rate out = outlet.at(pressures[n - 1]);
        into.inflow = in.massFlow();
        into.outflow = out.value();
        if (withSlopes) {
            into.inflowSlope = in.byDownstream();
            into.outflowSlope = out.slope();
            into.diagonal[0] = perMass[0] * in.byDownstream();
        }
        double before = in.massFlow();
        for (int i = 0; i < n - 1; i++) {
            double p = pressures[i];
            double next = pressures[i + 1];
            Rate flow = friction.at((p - next) * (p + next) * perLength[i]);
            into.rates[i] = (before - flow.value()) * perMass[i];
            before = flow.value();
            if (withSlopes) {
                double byGradient = 2 * flow.slope() * perLength[i];
                into.diagonal[i] -= perMass[i] * byGradient * p;
                into.above[i] = perMass[i] * byGradient * next;
                into.below[i] = perMass[i + 1] * byGradient * p;
                into.diagonal[i + 1] = -perMass[i + 1] * byGradient * next;
            }
        }
        into.rates[n - 1] = (before - out.value()) * perMass[n - 1];
        if (withSlopes) {
            into.diagonal[n - 1] -= perMass[n - 1] * out.slope();
        }
    }

    /** Rates of the cells' pressures, Pa/s, the flows at both ends, kg/s, and their derivatives: tridiagonal. */
    static final class Balance {
        final double[] rates;
        final double[] diagonal;
        final double[] above;
        final double[] below;
        double inflow;
        double outflow;
        double inflowSlope;
        double outflowSlope;

        Balance(int cells) {
            rates = new double[cells];
            diagonal = new double[cells];
            above = new double[cells];
            below = new double[cells];
        }
    }
}
