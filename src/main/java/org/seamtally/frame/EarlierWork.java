package org.seamtally.frame;

import org.seamtally.gas.SetUp;
import org.seamtally.gas.StartTransient;
import org.seamtally.seam.Joint;
import org.seamtally.seam.SeamIntegral;

/**
 * What earlier requests have had computed and later ones ask for again: a shop has few set-ups, a frame in hand differs
 * from its last estimate by one joint, and a catalogue's frames share their tubes. Only speed depends on it.
 */
public final class EarlierWork {

    /** A start holds some 10 kB and a shop has a handful of set-ups: this is 5 MB, and room for ten full comparisons. */
    private static final int STARTS = 500;

    /** A seam with its joint holds less than 1 kB: this is less than 2 MB, and room for a dozen large frames. */
    private static final int SEAMS = 2000;

    private final Recent<SetUp, StartTransient> starts = new Recent<>(STARTS, StartTransient::of);
    private final Recent<Joint, SeamIntegral.ByZones> seams = new Recent<>(SEAMS, FilletAlongSeam::measure);

    /** Starts of the gas on a filled hose. */
    public Recent<SetUp, StartTransient> starts() {
        return starts;
    }

    /** Seams of joints that have a root line, added up with their zones. */
    public Recent<Joint, SeamIntegral.ByZones> seams() {
        return seams;
    }
}
