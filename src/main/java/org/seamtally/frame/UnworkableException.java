package org.seamtally.frame;

import java.util.List;

/** What was given cannot be worked with: every problem that was found. */
public final class UnworkableException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final transient List<Problem> problems;

    /** @param problems at least one */
    public UnworkableException(List<Problem> problems) {
        super(problems.toString());
        this.problems = List.copyOf(problems);
    }

    /** Every problem that was found. */
    public List<Problem> problems() {
        return problems;
    }
}
