package org.seamtally.api;

import org.seamtally.wire.ProblemReport;

/** A problem on its way to the mapper that answers it. */
final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient ProblemReport problem;
    private final int retryAfterSeconds;

    ProblemException(ProblemReport problem) {
        this(problem, Problems.RETRY_AFTER_S);
    }

    /** @param retryAfterSeconds after which to ask again, where it is a 503 */
    ProblemException(ProblemReport problem, int retryAfterSeconds) {
        super(problem.title(), null, false, false);
        this.problem = problem;
        this.retryAfterSeconds = retryAfterSeconds;
    }

    ProblemReport problem() {
        return problem;
    }

    int retryAfterSeconds() {
        return retryAfterSeconds;
    }
}
