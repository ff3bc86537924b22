package org.seamtally.frame;

import java.util.List;
import java.util.Optional;

/**
 * A frame to be quoted, as given.
 *
 * @param name what the customer calls it; null where left out
 * @param quantity frames in the order; null where left out
 * @param joints at least one
 * @param settings the shop's
 * @param labour the shop's
 * @param prices empty: no cost part
 */
public record FrameJob(
        String name,
        Integer quantity,
        List<GivenJoint> joints,
        Settings settings,
        GivenLabour labour,
        Optional<Prices> prices) {

    /** @throws IllegalArgumentException where there is no joint */
    public FrameJob {
        joints = List.copyOf(joints);
        if (joints.isEmpty()) {
            throw new IllegalArgumentException("a frame has at least one joint");
        }
    }
}
