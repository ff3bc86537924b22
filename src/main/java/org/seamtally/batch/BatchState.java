package org.seamtally.batch;

import java.util.Locale;

/** State of a batch, derived from what is kept of it. */
public enum BatchState {
    /** It goes on as soon as a service with its version of the engine runs; none does, as far as is known. */
    WAITING_FOR_ENGINE,
    /** No chunk has its results. */
    WAITING,
    /** Some chunks have theirs. */
    RUNNING,
    /** All chunks have theirs. */
    DONE,
    /** It was cancelled before all had theirs. */
    CANCELLED;

    /** The state that a batch is in. */
    public static BatchState of(KeptBatch batch) {
        if (batch.cancelled().isPresent()) {
            return CANCELLED;
        }
        if (batch.chunksDone() == batch.sealed().chunks()) {
            return DONE;
        }
        if (!batch.engineAtWork()) {
            return WAITING_FOR_ENGINE;
        }
        return batch.chunksDone() == 0 ? WAITING : RUNNING;
    }

    /** Whether nothing more will come. */
    public boolean isEnded() {
        return this == DONE || this == CANCELLED;
    }

    /** The word in answers. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
