package org.seamtally.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Frames in the order of their price: dearest first, by currency; of equals the one that stands first in the file. */
final class DearFrames {

    private static final Comparator<JobTotals.DearFrame> ORDER = Comparator.comparing(JobTotals.DearFrame::currency)
            .thenComparing(JobTotals.DearFrame::total, Comparator.reverseOrder())
            .thenComparing(JobTotals.DearFrame::line);

    private DearFrames() {}

    /** The first {@link JobTotals#DEAREST} of both lists, for each currency. */
    static List<JobTotals.DearFrame> first(List<JobTotals.DearFrame> some, List<JobTotals.DearFrame> more) {
        List<JobTotals.DearFrame> all = new ArrayList<>(some);
        all.addAll(more);
        all.sort(ORDER);
        Map<String, Integer> told = new HashMap<>();
        all.removeIf(frame -> told.merge(frame.currency(), 1, Integer::sum) > JobTotals.DEAREST);
        return List.copyOf(all);
    }
}
