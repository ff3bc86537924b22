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
        Optional<GasUse> joint,
        List<Assumption> assumptions,
        List<Caution> cautions) {}
