package org.seamtally.batch;

/** Hands chunks out to whoever has time: implemented with the clustered task library. */
public interface ChunkHands {

    /** Chunks of a batch that was just sealed wait: they need not be waited for by the clock. */
    void more();
}
