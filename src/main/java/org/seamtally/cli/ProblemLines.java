package org.seamtally.cli;

import java.io.PrintWriter;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.Violation;

/** A problem as lines of text. */
final class ProblemLines {

    // longer lists of words are for the catalogue to print
    private static final int MOST_WORDS = 20;

    private ProblemLines() {}

    /** Prints the problem with a file, one line for each thing wrong. */
    static void print(Object file, ProblemReport problem, PrintWriter err) {
        err.println(file + ": " + problem.title());
        if (problem.violations() == null) {
            err.println("  " + problem.detail());
            err.flush();
            return;
        }
        for (Violation violation : problem.violations()) {
            StringBuilder line = new StringBuilder("  ");
            if (!violation.path().isEmpty()) {
                line.append(violation.path())
                        .append(violation.joint() == null ? "" : " (" + violation.joint() + ")")
                        .append(": ");
            }
            line.append(violation.message());
            if (violation.given() != null) {
                line.append(" (given: ").append(violation.given()).append(')');
            }
            if (violation.taken() != null && violation.taken().size() <= MOST_WORDS) {
                line.append(" [").append(String.join(", ", violation.taken())).append(']');
            }
            err.println(line);
        }
        err.flush();
    }
}
