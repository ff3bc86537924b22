package org.seamtally.batch;

/** Work on a chunk was given up because the program stops. */
public final class WorkStoppedException extends RuntimeException {

    private static final long serialVersionUID = 1;

    public WorkStoppedException() {
        super("the program stops", null, false, false);
    }
}
