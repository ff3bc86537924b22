package org.seamtally.frame;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A frame estimated.
 *
 * @param name what the customer calls it; empty where left out
 * @param quantity frames in the order
 * @param joints in the order sent
 * @param perFrame what one frame takes
 * @param forQuantity what the order takes
 * @param cost empty where no prices were given
 * @param assumptions every default that was used
 * @param basis what the figures rest on
 * @param cautions the whole frame's; each joint has its own
 */
public record FrameEstimate(
        Optional<String> name,
        int quantity,
        List<JointEstimate> joints,
        Totals perFrame,
        Totals forQuantity,
        Optional<Cost> cost,
        List<Assumption> assumptions,
        List<Basis> basis,
        List<Caution> cautions) {

    /** The same order at other prices. */
    public Cost at(Prices prices) {
        return Cost.of(forQuantity, quantity, prices, new ArrayList<>());
    }

    /** Whole rods to take to the job: rounded up once, for the order. */
    public long wholeRods() {
        // a hair under a whole rod is one rod: nine digits are all that is claimed
        return (long) Math.ceil(forQuantity.filler().rods() * (1 - 1e-9));
    }
}
