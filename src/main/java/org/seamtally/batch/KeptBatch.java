package org.seamtally.batch;

import java.time.Instant;
import java.util.Optional;

/**
 * A sealed batch, and what its chunks' results add up to. Its state is derived from this, and kept nowhere.
 *
 * @param engineAtWork whether a service with its version of the engine runs, as far as is known
 * @param sealed when the upload ended, and what was in it
 * @param cancelled when it was cancelled
 * @param chunksDone with results
 * @param counts of the chunks that are done
 * @param firstDone when the first chunk was done
 * @param lastDone when the latest chunk was done
 */
public record KeptBatch(
        BatchPlan plan,
        boolean engineAtWork,
        KeptBatches.Sealed sealed,
        Optional<Instant> cancelled,
        int chunksDone,
        Counts counts,
        Optional<Instant> firstDone,
        Optional<Instant> lastDone) {}
