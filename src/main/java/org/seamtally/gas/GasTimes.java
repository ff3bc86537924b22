package org.seamtally.gas;

/**
 * How long the gas flows before and after each arc.
 *
 * @param preFlow s, at least 0
 * @param postFlow s, at least 0
 */
public record GasTimes(double preFlow, double postFlow) {

    /** Common practice, no source: enough to clear a nozzle of air. */
    public static final double USUAL_PRE_FLOW = 0.5;

    /** Common practice, no source. */
    private static final double LEAST_POST_FLOW = 8;

    /** A per second of post-flow: common practice, no source (handbooks name it a rule of thumb, from memory). */
    private static final double CURRENT_PER_SECOND = 10;

    /** @throws IllegalArgumentException where a time is negative or not finite */
    public GasTimes {
        Refuse.unlessNotNegative(preFlow, "the pre-flow");
        Refuse.unlessNotNegative(postFlow, "the post-flow");
    }

    /**
     * The post-flow that tungsten and crater need: 1 s per 10 A, at least 8 s.
     *
     * @param current A, above 0
     * @return s
     */
    public static double usualPostFlow(double current) {
        Refuse.unlessPositive(current, "the current");
        return Math.max(current / CURRENT_PER_SECOND, LEAST_POST_FLOW);
    }
}
