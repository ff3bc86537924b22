package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.ChunkResult;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatches;
import org.seamtally.batch.KeptBatches.Sealed;
import org.seamtally.batch.SettableClock;
import org.seamtally.kept.IdempotencyKeys.Claim;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.UnavailableException;

/** What is no longer to be kept goes, and nothing else, by a clock that is set; on both databases. */
class HousekeepingTest {

    private static final Duration KEYS = Duration.ofDays(4);

    /** What holds on both. */
    abstract static class Contract {

        final SettableClock clock = new SettableClock(Instant.parse("2031-03-04T05:06:07.089Z"));
        Sql sql;
        SqlBatches batches;
        SqlKeys keys;
        Housekeeping housekeeping;

        abstract Sql sql();

        @BeforeEach
        void open() {
            sql = sql();
            batches = new SqlBatches(sql, clock);
            keys = new SqlKeys(sql);
            housekeeping = keeping(Optional.of(Duration.ofDays(30)));
        }

        @AfterEach
        void close() {
            housekeeping.close();
        }

        private Housekeeping keeping(Optional<Duration> retention) {
            return new Housekeeping(sql, batches, keys, new Retention(retention, KEYS), () -> {}, clock);
        }

        private UUID begun() {
            BatchPlan plan = new BatchPlan(
                    UUID.randomUUID(), "shop", "engine", "si", Form.CSV, clock.instant(), Optional.empty());
            batches.begin(plan);
            batches.add("shop", plan.id(), 0, new Chunk(1, new byte[] {1}));
            return plan.id();
        }

        private void seal(UUID batch) {
            batches.seal("shop", batch, new Sealed(1, 1, "00", clock.instant()), null);
        }

        private UUID done() {
            UUID batch = begun();
            seal(batch);
            batches.finish(
                    batch,
                    0,
                    new ChunkResult(new Counts(1, 1, 0), new byte[0], new byte[0], new byte[0]),
                    clock.instant());
            return batch;
        }

        private int rows(String table) {
            return sql.in(handle -> handle.createQuery("select count(*) from " + table)
                    .mapTo(Integer.class)
                    .one());
        }

        @Test
        void anUploadThatIsTouchedStaysHoweverSlowlyItsChunkFills() {
            UUID slow = begun();
            UUID silent = begun();
            for (int minute = 0; minute < 40; minute++) {
                clock.pass(KeptBatches.TOUCHED_EVERY);
                batches.touch("shop", slow);
                housekeeping.sweep();
            }
            seal(slow);
            assertTrue(batches.find("shop", slow).isPresent());
            assertThrows(UnavailableException.class, () -> seal(silent));
            assertEquals(1, rows("batch"));
            assertEquals(1, rows("batch_chunk"));
        }

        @Test
        void aBatchGoesSoLongAfterItEnded() {
            UUID early = done();
            clock.pass(Duration.ofDays(1));
            UUID late = done();
            clock.pass(Duration.ofDays(29));
            housekeeping.sweep();
            assertTrue(batches.find("shop", early).isPresent());
            clock.pass(Duration.ofSeconds(1));
            housekeeping.sweep();
            assertFalse(batches.find("shop", early).isPresent());
            assertTrue(batches.find("shop", late).isPresent());
            assertEquals(1, rows("batch"));
            assertEquals(1, rows("batch_chunk"));
            assertEquals(1, rows("chunk_result"));
        }

        @Test
        void aBatchThatHasNotEndedStays() {
            UUID waiting = begun();
            seal(waiting);
            clock.pass(Duration.ofDays(3_000));
            housekeeping.sweep();
            assertTrue(batches.find("shop", waiting).isPresent());
        }

        @Test
        void whereNothingElseIsSaidBatchesStay() {
            UUID done = done();
            clock.pass(Duration.ofDays(3_000));
            try (Housekeeping unsaid = keeping(Optional.empty())) {
                unsaid.sweep();
            }
            assertTrue(batches.find("shop", done).isPresent());
        }

        @Test
        void aKeyGoesSoLongAfterItWasUsed() {
            KeyHolder holder = new KeyHolder("shop", "batches", "k", UUID.randomUUID());
            keys.claim(holder, clock.instant());
            UUID batch = begun();
            clock.pass(Duration.ofSeconds(30));
            batches.seal("shop", batch, new Sealed(1, 1, "00", clock.instant()), holder.settled("d", new byte[] {1}));
            clock.pass(KEYS);
            housekeeping.sweep();
            assertInstanceOf(Claim.Settled.class, keys.claim(holder, clock.instant()));
            clock.pass(Duration.ofSeconds(1));
            housekeeping.sweep();
            assertEquals(new Claim.Granted(), keys.claim(holder, clock.instant()));
        }

        @Test
        void aRemovalThatWasBrokenOffIsEnded() {
            UUID half = done();
            // as a fault leaves it after the first of its transactions
            sql.in(handle -> handle.createUpdate("update batch set sealed_at = null, removed_at = :now where id = :id")
                    .bind("now", clock.instant())
                    .bind("id", half)
                    .execute());
            assertFalse(batches.find("shop", half).isPresent());
            assertTrue(batches.lines("shop", half, 0).isEmpty());
            assertTrue(batches.totals("shop", half).isEmpty());
            assertThrows(UnavailableException.class, () -> batches.add("shop", half, 1, new Chunk(1, new byte[1])));
            assertThrows(UnavailableException.class, () -> seal(half));
            housekeeping.sweep();
            assertEquals(0, rows("batch") + rows("batch_chunk") + rows("chunk_result"));
        }

        @Test
        void tasksThatNobodyWillCarryOutGo() {
            UUID batch = begun();
            seal(batch);
            new OpenChunks(sql, "engine").makeTasks();
            // killed while it worked on the chunk, and replaced by another version
            sql.in(handle -> handle.execute("update chunk_task set picked = true, picked_by = 'dead'"));
            new EngineAtWork(sql, "next engine").say(clock.instant());
            housekeeping.sweep();
            assertEquals(1, rows("chunk_task"), "its engine may come back");
            assertTrue(batches.cancel("shop", batch, clock.instant()));
            assertEquals(1, rows("chunk_task"), "a task that is picked is its replica's");
            housekeeping.sweep();
            assertEquals(0, rows("chunk_task"));
        }

        @Test
        void oneSweepThatFailsLeavesTheOthers() {
            KeyHolder holder = new KeyHolder("shop", "batches", "k", UUID.randomUUID());
            keys.claim(holder, clock.instant());
            clock.pass(KEYS.plusSeconds(1));
            sql.in(handle -> handle.execute("alter table batch_chunk rename to elsewhere"));
            begunWithoutChunk();
            clock.pass(Duration.ofHours(1));
            housekeeping.sweep();
            assertEquals(0, rows("idempotency_key"));
        }

        private void begunWithoutChunk() {
            batches.begin(new BatchPlan(
                    UUID.randomUUID(), "shop", "engine", "si", Form.CSV, clock.instant(), Optional.empty()));
        }

        @Test
        void toStopItInterruptsNothing() throws InterruptedException {
            CountDownLatch begun = new CountDownLatch(1);
            CountDownLatch closed = new CountDownLatch(1);
            CountDownLatch ended = new CountDownLatch(1);
            Housekeeping stopped = new Housekeeping(
                    sql,
                    batches,
                    keys,
                    new Retention(Optional.empty(), KEYS),
                    () -> {
                        begun.countDown();
                        ChunkTasksTest.pass(closed);
                        ended.countDown();
                    },
                    clock);
            stopped.start();
            ChunkTasksTest.pass(begun);
            stopped.close();
            closed.countDown();
            ChunkTasksTest.pass(ended);
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

    @ParameterizedTest
    @CsvSource({"PT23H, P4D", "P30D, PT23H"})
    void whatIsTooShortIsRefused(Duration ofBatches, Duration ofKeys) {
        assertThrows(IllegalArgumentException.class, () -> new Retention(Optional.of(ofBatches), ofKeys));
    }
}
