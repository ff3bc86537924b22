package org.seamtally.wire;

import java.util.List;
import java.util.function.LongSupplier;

/** The time that one frame of a job file may take, looked at before each of its joints. */
final class FrameDeadline {

    /**
     * Nanoseconds. A frame of ten thousand joints takes a few seconds on a slow machine; one that takes longer than this
     * holds up all that stand behind it in the file. A decision of this project.
     */
    static final long LONGEST = 30_000_000_000L;

    static final ProblemReport PROBLEM = ProblemReport.invalid(List.of(new Violation(
            "",
            Violation.Key.TIME_LIMIT,
            "working this frame out took longer than 30 s; split it into several",
            null,
            null)));

    private final LongSupplier nanoseconds;
    private final long start;

    FrameDeadline(LongSupplier nanoseconds) {
        this.nanoseconds = nanoseconds;
        this.start = nanoseconds.getAsLong();
    }

    /** Goes on where there is time left. */
    void check() {
        if (nanoseconds.getAsLong() - start > LONGEST) {
            throw new PassedException();
        }
    }

    /** The time is over. */
    static final class PassedException extends RuntimeException {

        private static final long serialVersionUID = 1;

        PassedException() {
            super(null, null, false, false);
        }
    }
}
