package org.seamtally.gas;

/**
 * Shielding gas by where it went, m³ at the reference state.
 *
 * @param arc while the arc burned, tacks included
 * @param preFlow before each arc
 * @param startSurge what the starts threw away above the setting
 * @param postFlow after each arc, over tungsten and crater
 * @param backPurge through the tube
 * @param leak between supply and torch
 * @param starts how many
 */
public record GasUse(
        double arc, double preFlow, double startSurge, double postFlow, double backPurge, double leak, long starts) {

    public static final GasUse NONE = new GasUse(0, 0, 0, 0, 0, 0, 0);

    /** @throws IllegalArgumentException where a volume is negative or not finite */
    public GasUse {
        Refuse.unlessNotNegative(arc, "the gas while the arc burns");
        Refuse.unlessNotNegative(preFlow, "the gas of the pre-flow");
        Refuse.unlessNotNegative(startSurge, "the start surge");
        Refuse.unlessNotNegative(postFlow, "the gas of the post-flow");
        Refuse.unlessNotNegative(backPurge, "the gas of the back purge");
        Refuse.unlessNotNegative(leak, "the leak");
        Refuse.unlessCount(starts, "the number of starts");
    }

    /**
     * What a joint takes. The hose is taken to have filled up before each start. Where the setting is not reachable, what
     * flows is the greatest flow.
     *
     * @param start of this joint's set-up
     * @param arcs of the joint
     */
    public static GasUse of(StartTransient start, JointArcs arcs) {
        double flow = start.steady().flow();
        return new GasUse(
                flow * arcs.burnTime(),
                flow * arcs.times().preFlow() * arcs.starts(),
                arcs.surge(start),
                flow * arcs.times().postFlow() * arcs.starts(),
                arcs.backPurge().map(purge -> purge.volume(arcs.arcTime())).orElse(0.0),
                0,
                arcs.starts());
    }

    /**
     * What leaks while the gas is connected.
     *
     * @param rate m³/s at the reference state
     * @param time s: the labour time
     */
    public static GasUse leaking(double rate, double time) {
        Refuse.unlessNotNegative(rate, "the leak rate");
        Refuse.unlessNotNegative(time, "the time that it leaks");
        return new GasUse(0, 0, 0, 0, 0, rate * time, 0);
    }

    public double total() {
        return arc + preFlow + startSurge + postFlow + backPurge + leak;
    }

    public GasUse plus(GasUse other) {
        return new GasUse(
                arc + other.arc,
                preFlow + other.preFlow,
                startSurge + other.startSurge,
                postFlow + other.postFlow,
                backPurge + other.backPurge,
                leak + other.leak,
                Math.addExact(starts, other.starts));
    }

    public GasUse times(long count) {
        Refuse.unlessCount(count, "the number of times");
        return new GasUse(
                arc * count,
                preFlow * count,
                startSurge * count,
                postFlow * count,
                backPurge * count,
                leak * count,
                Math.multiplyExact(starts, count));
    }

    /** What share of the gas did what; all 0 where there was no gas. */
    public Shares shares() {
        double total = total();
        return total == 0
                ? new Shares(0, 0, 0)
                : new Shares((arc + backPurge) / total, (preFlow + postFlow) / total, (startSurge + leak) / total);
    }

    /**
     * Shares of the gas, together 1.
     *
     * @param welding shields arc and root
     * @param preAndPostFlow needed too: they shield tungsten and crater
     * @param surgeAndLeak wasted
     */
    public record Shares(double welding, double preAndPostFlow, double surgeAndLeak) {}
}
