package org.seamtally.batch;

/** Told how far a run is: after every result line, by the thread that runs it. How often it is shown is the listener's. */
@FunctionalInterface
public interface Progress {

    /** Nobody looks. */
    Progress UNWATCHED = counts -> {};

    /** @param soFar frames whose result lines are written */
    void at(Counts soFar);
}
