package org.seamtally.batch;

import java.time.InstantSource;
import org.seamtally.kept.IdempotencyKeys;

class BatchesInMemoryTest extends KeptBatchesContractTest {

    private MemoryStore store;

    @Override
    protected KeptBatches batches(InstantSource clock) {
        store = new MemoryStore(clock);
        return store;
    }

    @Override
    protected IdempotencyKeys keys(InstantSource clock) {
        return store;
    }
}
