package org.seamtally.gas;

import java.util.Optional;

/**
 * The arcs of one joint, as its gas sees them: each tack and each segment of the seam is a start.
 *
 * @param arcTime s, of all segments together, without tacks
 * @param segments stretches that the seam is welded in, all alike; at least 1 where there is arc time
 * @param tackTime s, of one tack
 * @param tacks how many
 * @param times before and after each arc
 * @param backPurge of the tube, where asked for
 */
public record JointArcs(
        double arcTime, int segments, double tackTime, int tacks, GasTimes times, Optional<BackPurge> backPurge) {

    /** @throws IllegalArgumentException where a value cannot be */
    public JointArcs {
        Refuse.unlessNotNegative(arcTime, "the arc time");
        Refuse.unlessNotNegative(tackTime, "the tack time");
        Refuse.unlessCount(segments, "the number of segments");
        Refuse.unlessCount(tacks, "the number of tacks");
        if (segments == 0 && arcTime > 0) {
            throw new IllegalArgumentException("a seam of " + arcTime + " s of arc has at least one segment");
        }
        java.util.Objects.requireNonNull(times, "the gas times");
        java.util.Objects.requireNonNull(backPurge, "the back purge");
    }

    int starts() {
        return segments + tacks;
    }

    /** How long the arc burns, tacks and segments together, s. */
    double burnTime() {
        return arcTime + tacks * tackTime;
    }

    /** How long the gas is on for one start with this much arc, s. */
    private double onTime(double arc) {
        return times.preFlow() + arc + times.postFlow();
    }

    /** What all starts throw away, each within its own gas-on time, m³ at the reference state. */
    double surge(StartTransient start) {
        double ofSegments = segments == 0 ? 0 : segments * start.netSurge(onTime(arcTime / segments));
        double ofTacks = tacks == 0 ? 0 : tacks * start.netSurge(onTime(tackTime));
        return ofSegments + ofTacks;
    }
}
