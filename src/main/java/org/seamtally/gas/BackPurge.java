package org.seamtally.gas;

/**
 * Gas led through the tube to shield the root.
 *
 * @param flow m³/s at the reference state, at least 0
 * @param purgeTime s, before the arc, at least 0; the purge then goes on while the arc burns
 */
public record BackPurge(double flow, double purgeTime) {

    /** @throws IllegalArgumentException where a value is negative or not finite */
    public BackPurge {
        Refuse.unlessNotNegative(flow, "the back purge's flow");
        Refuse.unlessNotNegative(purgeTime, "the purge time");
    }

    /**
     * What it takes.
     *
     * @param arcTime s
     * @return m³ at the reference state
     */
    double volume(double arcTime) {
        return flow * (purgeTime + arcTime);
    }
}
