package org.seamtally.batch;

import org.seamtally.wire.JobLine;

/**
 * Frames of a job file.
 *
 * @param read done and refused together
 * @param done estimated
 * @param refused not estimated, each with its problem
 */
public record Counts(long read, long done, long refused) {

    public Counts {
        if (read != done + refused || done < 0 || refused < 0) {
            throw new IllegalArgumentException("read = done + refused: " + read + ", " + done + ", " + refused);
        }
    }

    /** None yet. */
    public static final Counts NONE = new Counts(0, 0, 0);

    /** One frame's. */
    static Counts of(JobLine line) {
        return line.refused() ? new Counts(1, 0, 1) : new Counts(1, 1, 0);
    }

    /** Both together. */
    public Counts plus(Counts other) {
        return new Counts(read + other.read, done + other.done, refused + other.refused);
    }
}
