package org.seamtally.frame;

import java.util.List;
import java.util.Optional;
import org.seamtally.metal.FilletAdequacy;

/**
 * What the quote says of one joint's metal.
 *
 * @param fillet the legs against the code's rule; empty for a plug
 * @param advisedPreheat what the preheat that is advised would take; empty where none is, where the joint is preheated, or
 *     where it cannot be worked out
 * @param cautions of the steel review and the fillet
 */
public record JointMetal(
        Optional<FilletAdequacy> fillet, Optional<AdvisedPreheat> advisedPreheat, List<Caution> cautions) {

    /** Copies the list. */
    public JointMetal {
        cautions = List.copyOf(cautions);
    }
}
