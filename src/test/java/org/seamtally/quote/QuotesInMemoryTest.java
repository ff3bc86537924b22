package org.seamtally.quote;

import java.time.Instant;
import org.junit.jupiter.api.Nested;
import org.seamtally.batch.MemoryStore;
import org.seamtally.batch.SettableClock;
import org.seamtally.kept.IdempotencyKeys;

/** The store in memory keeps to what every store does. */
class QuotesInMemoryTest {

    private static final MemoryStore KEYS = new MemoryStore(new SettableClock(Instant.EPOCH));
    private static final MemoryQuotes STORE = new MemoryQuotes(KEYS);

    @Nested
    class Quotes extends KeptQuotesContractTest {

        @Override
        protected KeptQuotes quotes() {
            return STORE;
        }

        @Override
        protected IdempotencyKeys keys() {
            return KEYS;
        }
    }

    @Nested
    class PriceBooks extends KeptPriceBooksContractTest {

        @Override
        protected KeptPriceBooks books() {
            return STORE;
        }
    }
}
