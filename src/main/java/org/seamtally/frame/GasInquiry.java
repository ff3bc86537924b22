package org.seamtally.frame;

import java.util.List;
import java.util.Optional;
import org.seamtally.gas.GasUse;
import org.seamtally.gas.StartTransient;

/**
 * What one gas set-up takes.
 *
 * @param perStart gas of one start by part
 * @param filled the start on a hose that has filled up
 * @param joint gas of a joint welded with it
 * @param assumptions every default that was used
 * @param cautions what to look at
 */
public record GasInquiry(
        GasUse perStart,
        StartTransient filled,
        Optional<OfJoint> joint,
        List<Assumption> assumptions,
        List<Caution> cautions) {

    /**
     * Gas of a joint.
     *
     * @param use by where it goes, leaks left out
     * @param stored what the joint's hose holds above its flowing state, over all its starts, m³
     */
    public record OfJoint(GasUse use, double stored) {}
}
