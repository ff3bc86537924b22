package org.seamtally.gas;

/**
 * The work that set-ups are compared under: starts that are all alike.
 *
 * @param startsPerShift above 0
 * @param burnTime s, of the arc at each start, above 0
 * @param arcOffTime s, between two arcs, at least 0
 * @param shiftsPerYear above 0
 * @param times pre-flow and post-flow, both within the time between two arcs
 */
public record Duty(double startsPerShift, double burnTime, double arcOffTime, double shiftsPerYear, GasTimes times) {

    /** @throws IllegalArgumentException where a value cannot be */
    public Duty {
        Refuse.unlessPositive(startsPerShift, "the number of starts a shift");
        Refuse.unlessPositive(burnTime, "the burn time");
        Refuse.unlessNotNegative(arcOffTime, "the time between two arcs");
        Refuse.unlessPositive(shiftsPerYear, "the number of shifts a year");
        java.util.Objects.requireNonNull(times, "the gas times");
    }

    /** How long the gas is shut between two arcs, s; 0 or less says that it never shuts. */
    public double gasOffTime() {
        return arcOffTime - times.postFlow() - times.preFlow();
    }

    public boolean gasShuts() {
        return gasOffTime() > 0;
    }

    /** How long the gas is on for one start, s. */
    public double gasOnTime() {
        return times.preFlow() + burnTime + times.postFlow();
    }

    public double startsPerYear() {
        return startsPerShift * shiftsPerYear;
    }

    /**
     * What one start takes under this duty. Where the gas never shuts it flows through the whole time between two arcs,
     * which is then less than pre-flow and post-flow together: each counts in proportion.
     *
     * @param repeated the start as it repeats itself under this duty
     */
    public GasUse perStart(StartTransient repeated) {
        double flow = repeated.steady().flow();
        double share = gasShuts() || times.preFlow() + times.postFlow() == 0
                ? 1
                : arcOffTime / (times.preFlow() + times.postFlow());
        return new GasUse(
                flow * burnTime,
                flow * times.preFlow() * share,
                repeated.netSurge(gasOnTime()),
                flow * times.postFlow() * share,
                0,
                0,
                1);
    }
}
