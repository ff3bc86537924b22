package org.seamtally.wire;

/**
 * What came of a text: an answer or a problem.
 *
 * @param <A> the answer
 */
public sealed interface Outcome<A> {

    /** An answer. */
    record Answered<A>(A answer) implements Outcome<A> {}

    /** A problem. */
    record Refused<A>(ProblemReport problem) implements Outcome<A> {}
}
