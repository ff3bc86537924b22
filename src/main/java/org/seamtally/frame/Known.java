package org.seamtally.frame;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.seamtally.gas.KnownTransients;
import org.seamtally.gas.SetUp;
import org.seamtally.gas.StartTransient;
import org.seamtally.seam.Joint;
import org.seamtally.seam.Seam;

/** What has been computed already for this request: the same joint or set-up twice is worked out once. */
final class Known {

    private final Map<Joint, Seam> seams = new HashMap<>();
    private final Map<SetUp, StartTransient> starts = new LinkedHashMap<>();
    private final KnownTransients others;

    /** @param others starts that other requests have had computed */
    Known(KnownTransients others) {
        this.others = others;
    }

    Seam seam(Joint joint) {
        return seams.computeIfAbsent(joint, Joint::seam);
    }

    /** The starts of all set-ups in use, in the order they were first met. */
    Collection<StartTransient> starts() {
        return starts.values();
    }

    StartTransient start(SetUp setUp) {
        return starts.computeIfAbsent(setUp, others::of);
    }
}
