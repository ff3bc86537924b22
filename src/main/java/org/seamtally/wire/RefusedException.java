package org.seamtally.wire;

/** A request that is not carried out, on its way to the one place that answers. */
public final class RefusedException extends Exception {

    private static final long serialVersionUID = 1;

    private final transient ProblemReport problem;

    /** @param problem what is answered */
    public RefusedException(ProblemReport problem) {
        super(problem.title(), null, false, false);
        this.problem = problem;
    }

    public ProblemReport problem() {
        return problem;
    }
}
