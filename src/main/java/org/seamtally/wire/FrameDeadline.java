package org.seamtally.wire;

import java.util.List;
import java.util.function.LongSupplier;

/** The time that one frame may take, looked at before each of its joints. */
final class FrameDeadline {

    /**
     * Nanoseconds. A frame of ten thousand joints takes a few seconds on a slow machine; one that takes longer than this
     * holds up all that stand behind it. A decision of this project.
     */
    static final long LONGEST = 30_000_000_000L;

    static final ProblemReport PROBLEM = ProblemReport.invalid(List.of(new Violation(
            "",
            Violation.Key.TIME_LIMIT,
            "working this frame out took longer than 30 s; split it into several",
            null,
            null)));

    /** Where somebody waits for one frame: it may do on a service that has less to do, and may be sent again. */
    static final ProblemReport ABANDONED = ProblemReport.of(
            503,
            "time-limit",
            "Working the frame out took too long.",
            "It was given up after 30 s. Ask again later, or split the frame into several.");

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
