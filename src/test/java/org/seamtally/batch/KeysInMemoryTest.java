package org.seamtally.batch;

import java.time.InstantSource;
import org.seamtally.kept.IdempotencyKeys;

class KeysInMemoryTest extends IdempotencyKeysContractTest {

    @Override
    protected IdempotencyKeys keys() {
        return new MemoryStore(InstantSource.system());
    }
}
