package org.seamtally.api;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.InstantSource;
import java.util.UUID;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.quote.KeptPriceBooks;
import org.seamtally.quote.KeptQuotes;
import org.seamtally.store.Sql;
import org.seamtally.store.SqlPriceBooks;
import org.seamtally.store.SqlQuotes;
import org.seamtally.wire.Engine;
import org.seamtally.wire.PriceBooks;
import org.seamtally.wire.Quotes;

/** Puts quotes and price books together: where they are kept, and what works them out. */
@ApplicationScoped
public class QuoteWork {

    @Produces
    @Singleton
    KeptPriceBooks keptBooks(Sql sql) {
        return new SqlPriceBooks(sql);
    }

    @Produces
    @Singleton
    KeptQuotes keptQuotes(Sql sql) {
        return new SqlQuotes(sql);
    }

    @Produces
    @Singleton
    PriceBooks books(KeptPriceBooks kept, InstantSource clock) {
        return new PriceBooks(kept, clock);
    }

    @Produces
    @Singleton
    Quotes quotes(Engine engine, KeptQuotes kept, KeptPriceBooks books, IdempotencyKeys keys, InstantSource clock) {
        return new Quotes(engine, kept, books, keys, clock, UUID::randomUUID);
    }
}
