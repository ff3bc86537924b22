package org.seamtally.store;

import java.time.InstantSource;
import org.junit.jupiter.api.Nested;
import org.seamtally.batch.IdempotencyKeysContractTest;
import org.seamtally.batch.KeptBatches;
import org.seamtally.batch.KeptBatchesContractTest;
import org.seamtally.kept.IdempotencyKeys;

/** Both databases keep to what every store does. */
class SqlStoreTest {

    private static final class Once {
        static final Sql H2 = Databases.h2();
        static final Sql POSTGRES = Databases.postgres();
    }

    @Nested
    class BatchesOnH2 extends KeptBatchesContractTest {

        @Override
        protected KeptBatches batches(InstantSource clock) {
            return new SqlBatches(Once.H2, clock);
        }

        @Override
        protected IdempotencyKeys keys(InstantSource clock) {
            return new SqlKeys(Once.H2);
        }
    }

    @Nested
    class BatchesOnPostgres extends KeptBatchesContractTest {

        @Override
        protected KeptBatches batches(InstantSource clock) {
            return new SqlBatches(Once.POSTGRES, clock);
        }

        @Override
        protected IdempotencyKeys keys(InstantSource clock) {
            return new SqlKeys(Once.POSTGRES);
        }
    }

    @Nested
    class KeysOnH2 extends IdempotencyKeysContractTest {

        @Override
        protected IdempotencyKeys keys() {
            return new SqlKeys(Once.H2);
        }
    }

    @Nested
    class KeysOnPostgres extends IdempotencyKeysContractTest {

        @Override
        protected IdempotencyKeys keys() {
            return new SqlKeys(Once.POSTGRES);
        }
    }
}
