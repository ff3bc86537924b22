package org.seamtally.wire;

/** Columns of a job table. */
public final class JobColumns {

    private JobColumns() {}

    static ProblemReport placed(ProblemReport problem, JobFrame.Places places) {
        return problem;
    }
}
