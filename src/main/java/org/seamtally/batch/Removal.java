package org.seamtally.batch;

/** What came of a wish to be rid of a batch. */
public enum Removal {
    /** It was running, and goes no further; its results so far are there. */
    CANCELLED,
    /** It had ended, and is gone. */
    REMOVED,
    /** There is no such batch. */
    UNKNOWN
}
