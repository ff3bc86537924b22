package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatches.Sealed;

/** How much waits in batches, and for how long, on both databases. */
class BacklogTest {

    private static final Instant SEALED = Instant.parse("2026-11-25T10:00:00Z");

    /** What holds on both. */
    abstract static class Contract {

        abstract Sql sql();

        @Test
        void whatWaitsIsCountedFromWhenItWasHandedIn() {
            Sql sql = sql();
            String engine = "engine-" + UUID.randomUUID();
            OpenChunks open = new OpenChunks(sql, engine);
            assertEquals(Backlog.NONE, Backlog.read(sql, open.task(), SEALED));

            SqlBatches batches = new SqlBatches(sql, InstantSource.fixed(SEALED));
            BatchPlan plan =
                    new BatchPlan(UUID.randomUUID(), "shop", engine, "si", Form.NDJSON, SEALED, Optional.empty());
            batches.begin(plan);
            batches.add("shop", plan.id(), 0, new Chunk(1, new byte[] {0}));
            batches.add("shop", plan.id(), 1, new Chunk(1, new byte[] {1}));
            batches.seal("shop", plan.id(), new Sealed(2, 2, "00", SEALED), null);
            open.makeTasks();

            assertEquals(
                    new Backlog(2, Duration.ofSeconds(90)), Backlog.read(sql, open.task(), SEALED.plusSeconds(90)));
            assertEquals(new Backlog(2, Duration.ZERO), Backlog.read(sql, open.task(), SEALED.minusSeconds(90)));
            assertEquals(Backlog.NONE, Backlog.read(sql, "chunk of another", SEALED.plusSeconds(90)));
        }
    }

    @Nested
    class OnH2 extends Contract {
        @Override
        Sql sql() {
            return Databases.h2();
        }
    }

    @Nested
    class OnPostgres extends Contract {
        @Override
        Sql sql() {
            return Databases.postgres();
        }
    }
}
