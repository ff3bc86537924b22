package org.seamtally.wire;

import java.util.function.Supplier;

/**
 * What came of one frame of a job file.
 *
 * @param line in the file that the frame starts in, from 1
 * @param json {@code {"line": n, "estimate": …}} or {@code {"line": n, "problem": …}} in UTF-8, no line end
 * @param totals what it adds to a batch's summary, added up where it is asked for; null where it was refused
 */
public record JobLine(long line, byte[] json, Supplier<JobTotals> totals) {

    /** Whether it was refused. */
    public boolean refused() {
        return totals == null;
    }
}
