package org.seamtally.batch;

/** Hands chunks out to whoever has time: implemented with the clustered task library. */
public interface ChunkHands {

    /**
     * Chunks of a batch that was just sealed wait: they need not be waited for by the clock. A hint and no more: where it is
     * not heard, in a service that stops say, they are found by the next look, here or in another replica.
     */
    void more();
}
