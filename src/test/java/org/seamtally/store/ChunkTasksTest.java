package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.BatchState;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.ChunkResult;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatches.ChunkName;
import org.seamtally.batch.KeptBatches.Sealed;
import org.seamtally.batch.SettableClock;
import org.seamtally.batch.WorkStoppedException;
import org.seamtally.kept.UnavailableException;

/** Chunks are handed out, once and again where they have to be, on both databases. */
class ChunkTasksTest {

    private static final InstantSource CLOCK = InstantSource.system();

    /** What holds on both. */
    abstract static class Contract {

        final String engine = "engine-" + UUID.randomUUID();
        final List<ChunkTasks> replicas = new ArrayList<>();
        Sql sql;
        SqlBatches batches;

        abstract Sql sql();

        @BeforeEach
        void open() {
            sql = sql();
            batches = new SqlBatches(sql, CLOCK);
        }

        @AfterEach
        void stop() {
            replicas.forEach(ChunkTasks::close);
        }

        ChunkTasks replica(String version, Predicate<ChunkName> work) {
            ChunkTasks replica =
                    new ChunkTasks(sql, version, work, 2, UUID.randomUUID().toString(), CLOCK);
            replicas.add(replica);
            return replica;
        }

        UUID sealed(String version, int chunks) {
            BatchPlan plan = new BatchPlan(
                    UUID.randomUUID(), "shop", version, "si", Form.NDJSON, CLOCK.instant(), Optional.empty());
            batches.begin(plan);
            for (int chunk = 0; chunk < chunks; chunk++) {
                batches.add("shop", plan.id(), chunk, new Chunk(1, new byte[] {(byte) chunk}));
            }
            batches.seal("shop", plan.id(), new Sealed(chunks, chunks, "00", CLOCK.instant()), null);
            return plan.id();
        }

        boolean finish(ChunkName chunk) {
            return batches.finish(
                    chunk.batch(),
                    chunk.number(),
                    new ChunkResult(new Counts(1, 1, 0), new byte[0], new byte[0], new byte[0]),
                    CLOCK.instant());
        }

        int done(UUID batch) {
            return batches.find("shop", batch).orElseThrow().chunksDone();
        }

        int tasks(String condition) {
            return sql.in(handle -> handle.createQuery("select count(*) from chunk_task where " + condition)
                    .mapTo(int.class)
                    .one());
        }

        /** Leaves a batch's tasks as a replica leaves them that was killed while it worked on them. */
        void pickAndDie(String version) {
            new OpenChunks(sql, version).makeTasks();
            sql.in(handle -> handle.createUpdate("update chunk_task set picked = true, picked_by = 'dead',"
                            + " last_heartbeat = :then where task_name = :task")
                    .bind("then", CLOCK.instant().minusSeconds(60))
                    .bind("task", "chunk " + version)
                    .execute());
        }

        @Test
        void whatWasSealedIsWorkedOnToTheEndAndLeavesNoTask() {
            UUID before = sealed(engine, 7);
            ChunkTasks replica = replica(engine, this::finish);
            replica.start();
            await("the batch from before the start", () -> done(before) == 7);

            UUID after = sealed(engine, 5);
            replica.more();
            await("the batch from after the start", () -> done(after) == 5);
            await("no task left", () -> tasks("task_name = 'chunk " + engine + "'") == 0);
        }

        @Test
        void sweepsMakeATaskAChunkOnce() {
            sealed(engine, 3);
            OpenChunks open = new OpenChunks(sql, engine);
            assertEquals(3, open.makeTasks());
            assertEquals(0, open.makeTasks());
            assertEquals(3, tasks("task_name = '" + open.task() + "'"));
        }

        @Test
        void tasksAreMadeOfWhatIsOpenAlone() {
            UUID cancelled = sealed(engine, 2);
            batches.cancel("shop", cancelled, CLOCK.instant());
            finish(new ChunkName("shop", sealed(engine, 1), 0));
            UUID half = sealed(engine, 2);
            finish(new ChunkName("shop", half, 0));
            batches.begin(new BatchPlan(
                    UUID.randomUUID(), "shop", engine, "si", Form.CSV, CLOCK.instant(), Optional.empty()));
            sealed(engine + "-next", 3);
            assertEquals(1, new OpenChunks(sql, engine).makeTasks());
            assertEquals(1, tasks("task_instance = 'shop/" + half + "/1'"));
        }

        @Test
        void aHintAfterTheStopIsHarmless() {
            ChunkTasks replica = replica(engine, this::finish);
            replica.start();
            replica.close();
            replica.more();
            UUID batch = sealed(engine, 1);
            replica(engine, this::finish).start();
            await("the next start", () -> done(batch) == 1);
        }

        @Test
        void aBatchOfAnEngineThatDoesNotRunIsSeenToWaitForIt() {
            replica(engine, this::finish).start();
            UUID others = sealed(engine + "-gone", 3);
            UUID own = sealed(engine, 3);
            await("its own batch", () -> done(own) == 3);
            assertEquals(BatchState.WAITING_FOR_ENGINE, state(others));
            assertEquals(BatchState.DONE, state(own));
            assertEquals(
                    List.of(BatchState.DONE, BatchState.WAITING_FOR_ENGINE),
                    batches.list("shop", 2, null).stream().map(BatchState::of).toList());
        }

        private BatchState state(UUID batch) {
            return BatchState.of(batches.find("shop", batch).orElseThrow());
        }

        @Test
        void anotherEnginesBatchIsCancelledAndRemovedWithItsTasks() {
            String gone = engine + "-gone";
            UUID others = sealed(gone, 3);
            UUID kept = sealed(gone, 2);
            new OpenChunks(sql, gone).makeTasks();
            assertFalse(removed(others), "it has not ended");
            assertEquals(3, tasks("task_instance like '%" + others + "%'"));
            assertTrue(batches.cancel("shop", others, CLOCK.instant()));
            assertEquals(0, tasks("task_instance like '%" + others + "%'"));
            assertTrue(removed(others));
            assertEquals(2, tasks("task_instance like '%" + kept + "%'"));
        }

        private boolean removed(UUID batch) {
            batches.remove("shop", batch);
            return batches.find("shop", batch).isEmpty();
        }

        @Test
        void anotherVersionsChunksAreNeitherPickedNorDeleted() {
            String next = engine + "-next";
            UUID others = sealed(next, 3);
            new OpenChunks(sql, next).makeTasks();
            UUID own = sealed(engine, 3);
            replica(engine, this::finish).start();
            await("its own batch", () -> done(own) == 3);
            // one that came later shows that it looked again
            UUID later = sealed(engine, 3);
            await("its own later batch", () -> done(later) == 3);

            assertEquals(0, done(others));
            assertEquals(3, tasks("task_name = 'chunk " + next + "' and picked = false and version = 1"));
        }

        @Test
        void whatADeadReplicaHadComesBack() {
            UUID batch = sealed(engine, 4);
            pickAndDie(engine);
            replica(engine, this::finish).start();
            await("the dead replica's chunks", () -> done(batch) == 4);
        }

        @Test
        void aChunkThatFailsIsTriedAgainAndHoldsUpNoOther() {
            UUID batch = sealed(engine, 6);
            AtomicInteger faults = new AtomicInteger();
            CountDownLatch others = new CountDownLatch(5);
            replica(engine, chunk -> {
                        if (chunk.number() == 0 && others.getCount() > 0) {
                            faults.incrementAndGet();
                            throw new IllegalStateException("a fault of the test's making");
                        }
                        others.countDown();
                        return finish(chunk);
                    })
                    .start();
            await("all chunks", () -> done(batch) == 6);
            assertTrue(faults.get() > 0);
        }

        @Test
        void aChunkThatCouldNotBeKeptIsTriedAgain() {
            UUID batch = sealed(engine, 3);
            Set<Integer> refused = ConcurrentHashMap.newKeySet();
            replica(engine, chunk -> {
                        if (refused.add(chunk.number())) {
                            throw new UnavailableException("a fault of the test's making", null);
                        }
                        return finish(chunk);
                    })
                    .start();
            await("all chunks", () -> done(batch) == 3);
        }

        @Test
        void ofACancelledBatchNothingIsKeptAndNoTaskStays() throws InterruptedException {
            UUID batch = sealed(engine, 8);
            CountDownLatch begun = new CountDownLatch(1);
            CountDownLatch cancelled = new CountDownLatch(1);
            replica(engine, chunk -> {
                        begun.countDown();
                        pass(cancelled);
                        return finish(chunk);
                    })
                    .start();
            pass(begun);
            assertTrue(batches.cancel("shop", batch, CLOCK.instant()));
            cancelled.countDown();
            await("no task left", () -> tasks("task_name = 'chunk " + engine + "'") == 0);
            assertEquals(0, done(batch));
        }

        @Test
        void stoppedItLetsWhatItBeganEndAndBeginsNothing() {
            UUID batch = sealed(engine, 50);
            CountDownLatch begun = new CountDownLatch(2);
            ChunkTasks replica = replica(engine, chunk -> {
                begun.countDown();
                return finish(chunk);
            });
            replica.start();
            pass(begun);
            replica.close();
            int then = done(batch);
            assertEquals(0, tasks("task_name = 'chunk " + engine + "' and picked = true"));
            replica(engine, this::finish).start();
            await("the rest", () -> done(batch) == 50);
            assertTrue(then >= 2);
        }

        @Test
        void whatIsGivenUpForAStopIsHandedOutAtOnce() {
            UUID batch = sealed(engine, 2);
            CountDownLatch begun = new CountDownLatch(2);
            CountDownLatch stopped = new CountDownLatch(1);
            ChunkTasks replica = replica(engine, chunk -> {
                begun.countDown();
                pass(stopped);
                throw new WorkStoppedException();
            });
            replica.start();
            pass(begun);
            stopped.countDown();
            replica.close();
            assertEquals(2, tasks("task_name = 'chunk " + engine + "' and picked = false"));
            // due since the batch was sealed, not later
            assertEquals(2, tasks("task_name = 'chunk " + engine + "' and execution_time <= current_timestamp"));
            assertEquals(0, done(batch));
        }
    }

    @Nested
    class OnH2 extends Contract {

        @Override
        Sql sql() {
            return Databases.h2();
        }

        @Test
        void whereOneProcessAloneWorksOtherEnginesAreGoneAtOnce() {
            UUID batch = sealed(engine, 1);
            new EngineAtWork(sql, engine).say(CLOCK.instant());
            assertTrue(batches.find("shop", batch).orElseThrow().engineAtWork());
            new EngineAtWork(sql, engine + "-next").say(CLOCK.instant());
            assertFalse(batches.find("shop", batch).orElseThrow().engineAtWork());
        }
    }

    @Nested
    class OnPostgres extends Contract {

        @Override
        Sql sql() {
            return Databases.postgres();
        }

        @Test
        void twoReplicasShareABatch() {
            UUID batch = sealed(engine, 40);
            Map<String, Set<Integer>> worked =
                    Map.of("one", ConcurrentHashMap.newKeySet(), "other", ConcurrentHashMap.newKeySet());
            // neither goes on before the other has begun
            CountDownLatch both = new CountDownLatch(2);
            worked.forEach((name, chunks) -> replica(engine, chunk -> {
                        if (chunks.isEmpty()) {
                            both.countDown();
                        }
                        chunks.add(chunk.number());
                        pass(both);
                        return finish(chunk);
                    })
                    .start());
            await("all chunks", () -> done(batch) == 40);
            Set<Integer> twice = new java.util.HashSet<>(worked.get("one"));
            twice.retainAll(worked.get("other"));
            assertEquals(Set.of(), twice);
            assertEquals(40, worked.get("one").size() + worked.get("other").size());
            assertFalse(worked.get("one").isEmpty());
            assertFalse(worked.get("other").isEmpty());
        }

        @Test
        void anEngineThatIsNoLongerHeardOfIsTakenNotToRunAfterAMinute() {
            SettableClock clock = new SettableClock(CLOCK.instant());
            SqlBatches seen = new SqlBatches(sql, clock);
            UUID batch = sealed(engine, 1);
            EngineAtWork replica = new EngineAtWork(sql, engine);
            new EngineAtWork(sql, engine).say(clock.instant());
            replica.say(clock.instant());
            clock.pass(Duration.ofSeconds(50));
            replica.say(clock.instant());
            new EngineAtWork(sql, engine + "-next").say(clock.instant());
            clock.pass(Duration.ofSeconds(50));
            assertTrue(seen.find("shop", batch).orElseThrow().engineAtWork());
            clock.pass(Duration.ofSeconds(20));
            assertFalse(seen.find("shop", batch).orElseThrow().engineAtWork());
            // a clock that is set back does not silence it
            replica.say(clock.pass(Duration.ofHours(-1)));
            assertTrue(seen.find("shop", batch).orElseThrow().engineAtWork());
        }

        @Test
        void anotherVersionsDeadChunksAreLeftToIt() {
            String next = engine + "-next";
            sealed(next, 3);
            pickAndDie(next);
            UUID batch = sealed(engine, 2);
            pickAndDie(engine);
            replica(engine, this::finish).start();
            await("its own dead chunks", () -> done(batch) == 2);
            assertEquals(3, tasks("task_name = 'chunk " + next + "' and picked = true and picked_by = 'dead'"));
        }
    }

    static void pass(CountDownLatch latch) {
        try {
            assertTrue(latch.await(60, TimeUnit.SECONDS), "not within a minute");
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    static void await(String what, BooleanSupplier condition) {
        Instant limit = Instant.now().plus(Duration.ofSeconds(60));
        while (!condition.getAsBoolean()) {
            if (Instant.now().isAfter(limit)) {
                fail("not within a minute: " + what);
            }
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
