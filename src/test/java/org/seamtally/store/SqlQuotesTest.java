package org.seamtally.store;

import org.junit.jupiter.api.Nested;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.quote.KeptPriceBooks;
import org.seamtally.quote.KeptPriceBooksContractTest;
import org.seamtally.quote.KeptQuotes;
import org.seamtally.quote.KeptQuotesContractTest;

/** Both databases keep to what every store of quotes and price books does. */
class SqlQuotesTest {

    private static final class Once {
        static final Sql H2 = Databases.h2();
        static final Sql POSTGRES = Databases.postgres();
    }

    @Nested
    class QuotesOnH2 extends KeptQuotesContractTest {

        @Override
        protected KeptQuotes quotes() {
            return new SqlQuotes(Once.H2);
        }

        @Override
        protected IdempotencyKeys keys() {
            return new SqlKeys(Once.H2);
        }
    }

    @Nested
    class QuotesOnPostgres extends KeptQuotesContractTest {

        @Override
        protected KeptQuotes quotes() {
            return new SqlQuotes(Once.POSTGRES);
        }

        @Override
        protected IdempotencyKeys keys() {
            return new SqlKeys(Once.POSTGRES);
        }
    }

    @Nested
    class PriceBooksOnH2 extends KeptPriceBooksContractTest {

        @Override
        protected KeptPriceBooks books() {
            return new SqlPriceBooks(Once.H2);
        }
    }

    @Nested
    class PriceBooksOnPostgres extends KeptPriceBooksContractTest {

        @Override
        protected KeptPriceBooks books() {
            return new SqlPriceBooks(Once.POSTGRES);
        }
    }
}
