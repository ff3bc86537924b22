package org.seamtally.batch;

/** Form of a job file, or of its results. */
public enum Form {
    /** A JSON object a line. */
    NDJSON,
    /** A table: comma-separated values by RFC 4180. */
    CSV
}
