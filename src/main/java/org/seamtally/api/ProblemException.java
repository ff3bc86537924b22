package org.seamtally.api;

import org.seamtally.wire.ProblemReport;

/** A problem on its way to the mapper that answers it. */
final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient ProblemReport problem;

    ProblemException(ProblemReport problem) {
        super(problem.title(), null, false, false);
        this.problem = problem;
    }

    ProblemReport problem() {
        return problem;
    }
}
