package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.batch.KeptBatches.ChunkLines;
import org.seamtally.batch.KeptBatches.Sealed;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;

/**
 * What every store of batches keeps to. Every test uses an engine version and a shop of its own, so that a database may be
 * shared by them.
 */
public abstract class KeptBatchesContractTest {

    /** Milliseconds, as databases keep them exactly. */
    private static final Instant START = Instant.parse("2031-03-04T05:06:07.089Z");

    private static final String DOOR = "POST /v1/batches";

    private final SettableClock clock = new SettableClock(START);
    private final String shop = "shop-" + UUID.randomUUID();
    private final String engine = "engine-" + UUID.randomUUID();
    private KeptBatches kept;
    private IdempotencyKeys keys;

    /** A store; times that no call brings are the clock's. */
    protected abstract KeptBatches batches(InstantSource clock);

    /** Keys of the same store. */
    protected abstract IdempotencyKeys keys(InstantSource clock);

    @BeforeEach
    void open() {
        kept = batches(clock);
        keys = keys(clock);
    }

    private BatchPlan plan(Instant at) {
        return new BatchPlan(UUID.randomUUID(), shop, engine, "us", Form.CSV, at, Optional.of("night of " + at));
    }

    private static Chunk chunk(int number) {
        return new Chunk(number + 1, ("frames of " + number).getBytes(StandardCharsets.UTF_8));
    }

    private static ChunkResult result(int number) {
        return new ChunkResult(
                new Counts(number + 1, number, 1),
                ("lines " + number).getBytes(StandardCharsets.UTF_8),
                ("refusals " + number).getBytes(StandardCharsets.UTF_8),
                ("{\"totals\":" + number + "}").getBytes(StandardCharsets.UTF_8));
    }

    private static Sealed end(int chunks, Instant at) {
        return new Sealed(chunks, chunks * (chunks + 1) / 2, "00ff", at);
    }

    private BatchPlan sealed(int chunks) {
        BatchPlan plan = plan(clock.pass(Duration.ofMillis(10)));
        kept.begin(plan);
        for (int number = 0; number < chunks; number++) {
            kept.add(shop, plan.id(), number, chunk(number));
        }
        kept.seal(shop, plan.id(), end(chunks, clock.pass(Duration.ofMillis(10))), null);
        return plan;
    }

    private KeyHolder holder(String key) {
        return new KeyHolder(shop, DOOR, key, UUID.randomUUID());
    }

    @Test
    void anUploadIsNotThereUntilItIsSealed() {
        BatchPlan plan = plan(START);
        kept.begin(plan);
        kept.add(shop, plan.id(), 0, chunk(0));

        assertTrue(kept.find(shop, plan.id()).isEmpty());
        assertTrue(kept.list(shop, 10, null).isEmpty());
        assertTrue(kept.chunk(plan.id(), 0).isEmpty());
        assertFalse(kept.finish(plan.id(), 0, result(0), START));
        assertFalse(kept.cancel(shop, plan.id(), START));

        kept.seal(shop, plan.id(), end(1, START.plusSeconds(1)), null);

        KeptBatch back = kept.find(shop, plan.id()).orElseThrow();
        assertEquals(
                new KeptBatch(
                        plan,
                        back.engineAtWork(),
                        end(1, START.plusSeconds(1)),
                        Optional.empty(),
                        0,
                        Counts.NONE,
                        Optional.empty(),
                        Optional.empty()),
                back);
    }

    @Test
    void chunksComeBackAsTheyWereKept() {
        BatchPlan plan = sealed(3);
        for (int number = 0; number < 3; number++) {
            Chunk back = kept.chunk(plan.id(), number).orElseThrow();
            assertEquals(chunk(number).frames(), back.frames());
            assertArrayEquals(chunk(number).bytes(), back.bytes());
        }
        assertTrue(kept.chunk(plan.id(), 3).isEmpty());
        assertTrue(kept.chunk(UUID.randomUUID(), 0).isEmpty());
    }

    @Test
    void aChunkOfAnyBytesIsKept() {
        byte[] bytes = new byte[1 << 20];
        new Random(11).nextBytes(bytes);
        BatchPlan plan = plan(START);
        kept.begin(plan);
        kept.add(shop, plan.id(), 0, new Chunk(1, bytes));
        kept.seal(shop, plan.id(), end(1, START), null);
        assertTrue(kept.finish(plan.id(), 0, new ChunkResult(new Counts(1, 1, 0), bytes, bytes, bytes), START));

        assertArrayEquals(bytes, kept.chunk(plan.id(), 0).orElseThrow().bytes());
        assertArrayEquals(bytes, kept.lines(shop, plan.id(), 0).orElseThrow().lines());
        assertArrayEquals(bytes, kept.refusals(shop, plan.id(), 0).orElseThrow().lines());
        assertArrayEquals(bytes, kept.totals(shop, plan.id()).get(0));
    }

    @Test
    void aBatchWithoutAnUploadsFaultsIsForgottenWhole() {
        BatchPlan plan = plan(START);
        kept.begin(plan);
        kept.add(shop, plan.id(), 0, chunk(0));
        kept.discard(shop, plan.id());
        kept.discard(shop, plan.id());

        assertTrue(kept.find(shop, plan.id()).isEmpty());
        assertTrue(kept.chunk(plan.id(), 0).isEmpty());
    }

    @Test
    void aSealedBatchIsNotDiscarded() {
        BatchPlan plan = sealed(1);
        kept.discard(shop, plan.id());
        assertTrue(kept.find(shop, plan.id()).isPresent());
        assertTrue(kept.chunk(plan.id(), 0).isPresent());
    }

    @Test
    void uploadsThatNobodyAddsToAreForgotten() {
        BatchPlan idle = plan(clock.instant());
        kept.begin(idle);
        BatchPlan slow = plan(clock.instant());
        kept.begin(slow);
        BatchPlan slower = plan(clock.instant());
        kept.begin(slower);
        BatchPlan done = sealed(1);
        Instant since = clock.pass(Duration.ofHours(1));
        clock.pass(Duration.ofSeconds(1));
        kept.add(shop, slow.id(), 0, chunk(0));
        kept.touch(shop, slower.id());
        kept.touch("other-" + shop, idle.id());

        // others' uploads in a shared database may go too
        assertTrue(kept.discardBrokenOff(since) > 0);

        kept.seal(shop, slow.id(), end(1, clock.instant()), null);
        kept.add(shop, slower.id(), 0, chunk(0));
        kept.seal(shop, slower.id(), end(1, clock.instant()), null);
        assertTrue(kept.find(shop, slow.id()).isPresent());
        assertTrue(kept.chunk(slow.id(), 0).isPresent());
        assertTrue(kept.find(shop, slower.id()).isPresent());
        assertTrue(kept.find(shop, done.id()).isPresent());
        kept.touch(shop, idle.id());
        assertThrows(UnavailableException.class, () -> kept.add(shop, idle.id(), 0, chunk(0)));
        assertThrows(UnavailableException.class, () -> kept.seal(shop, idle.id(), end(1, clock.instant()), null));
        assertTrue(kept.find(shop, idle.id()).isEmpty());
    }

    @Test
    void batchesThatEndedLongAgoAreRemoved() {
        // more chunks than go at once
        BatchPlan done = sealed(40);
        for (int chunk = 0; chunk < 40; chunk++) {
            kept.finish(done.id(), chunk, result(chunk), clock.instant());
        }
        BatchPlan cancelled = sealed(2);
        kept.cancel(shop, cancelled.id(), clock.instant());
        BatchPlan waiting = sealed(1);
        BatchPlan running = sealed(2);
        kept.finish(running.id(), 0, result(0), clock.instant());
        BatchPlan endedLate = sealed(1);
        BatchPlan cancelledLate = sealed(1);
        Instant before = clock.pass(Duration.ofHours(1));
        clock.pass(Duration.ofSeconds(1));
        kept.finish(endedLate.id(), 0, result(0), clock.instant());
        kept.cancel(shop, cancelledLate.id(), clock.instant());

        // others' batches in a shared database may go too
        assertTrue(kept.removeEnded(before) >= 2);

        assertEquals(
                List.of(cancelledLate, endedLate, running, waiting),
                kept.list(shop, 10, null).stream().map(KeptBatch::plan).toList());
        assertTrue(kept.find(shop, done.id()).isEmpty());
        assertTrue(kept.chunk(done.id(), 39).isEmpty());
        assertTrue(kept.lines(shop, done.id(), 39).isEmpty());
        assertTrue(kept.totals(shop, done.id()).isEmpty());
        assertEquals(0, kept.removeEnded(before));
        assertTrue(kept.finish(running.id(), 1, result(1), clock.instant()));
    }

    @Test
    void aChunksResultsAreKeptOnce() {
        BatchPlan plan = sealed(2);
        Instant first = clock.pass(Duration.ofSeconds(2));

        assertTrue(kept.finish(plan.id(), 1, result(1), first));
        assertFalse(kept.finish(plan.id(), 1, result(0), first.plusSeconds(1)));

        ChunkLines lines = kept.lines(shop, plan.id(), 1).orElseThrow();
        assertEquals(result(1).counts(), lines.counts());
        assertArrayEquals(result(1).lines(), lines.lines());
        ChunkLines refusals = kept.refusals(shop, plan.id(), 1).orElseThrow();
        assertEquals(result(1).counts(), refusals.counts());
        assertArrayEquals(result(1).refusals(), refusals.lines());
        assertEquals(Optional.of(result(1).counts()), kept.counts(shop, plan.id(), 1));
        assertArrayEquals(result(1).totals(), kept.totals(shop, plan.id()).get(0));
        assertTrue(kept.lines(shop, plan.id(), 0).isEmpty());
        assertTrue(kept.refusals(shop, plan.id(), 0).isEmpty());
        assertTrue(kept.counts(shop, plan.id(), 0).isEmpty());
        KeptBatch half = kept.find(shop, plan.id()).orElseThrow();
        assertEquals(1, half.chunksDone());
        assertEquals(result(1).counts(), half.counts());
        assertEquals(Optional.of(first), half.firstDone());
        assertEquals(Optional.of(first), half.lastDone());

        Instant last = clock.pass(Duration.ofSeconds(3));
        assertTrue(kept.finish(plan.id(), 0, result(0), last));

        KeptBatch whole = kept.find(shop, plan.id()).orElseThrow();
        assertEquals(2, whole.chunksDone());
        assertEquals(result(0).counts().plus(result(1).counts()), whole.counts());
        assertEquals(Optional.of(first), whole.firstDone());
        assertEquals(Optional.of(last), whole.lastDone());
        assertEquals(2, kept.totals(shop, plan.id()).size());
        assertArrayEquals(result(0).totals(), kept.totals(shop, plan.id()).get(0));
        assertArrayEquals(result(1).totals(), kept.totals(shop, plan.id()).get(1));
    }

    @Test
    void ofManyThatFinishAChunkAtOnceOneIsKept() throws Exception {
        BatchPlan plan = sealed(4);
        int workers = 4;
        ExecutorService threads = Executors.newFixedThreadPool(workers);
        try {
            for (int chunk = 0; chunk < 4; chunk++) {
                CyclicBarrier together = new CyclicBarrier(workers);
                List<Callable<Boolean>> tries = new ArrayList<>();
                for (int worker = 0; worker < workers; worker++) {
                    int number = chunk;
                    tries.add(() -> {
                        together.await();
                        return kept.finish(plan.id(), number, result(number), START);
                    });
                }
                int kepts = 0;
                for (Future<Boolean> each : threads.invokeAll(tries)) {
                    kepts += each.get() ? 1 : 0;
                }
                assertEquals(1, kepts);
            }
        } finally {
            threads.shutdownNow();
        }
        assertEquals(
                new Counts(10, 6, 4), kept.find(shop, plan.id()).orElseThrow().counts());
    }

    @Test
    void aCancelledBatchTakesNoMoreResults() {
        BatchPlan plan = sealed(3);
        kept.finish(plan.id(), 0, result(0), START);
        Instant at = clock.pass(Duration.ofSeconds(1));

        assertTrue(kept.cancel(shop, plan.id(), at));
        assertFalse(kept.cancel(shop, plan.id(), at.plusSeconds(1)));

        assertFalse(kept.finish(plan.id(), 1, result(1), at));
        KeptBatch cancelled = kept.find(shop, plan.id()).orElseThrow();
        assertEquals(Optional.of(at), cancelled.cancelled());
        assertEquals(1, cancelled.chunksDone());
        assertTrue(kept.lines(shop, plan.id(), 0).isPresent());
        assertTrue(kept.lines(shop, plan.id(), 1).isEmpty());
    }

    @Test
    void anEndedBatchIsNotCancelled() {
        BatchPlan plan = sealed(1);
        kept.finish(plan.id(), 0, result(0), START);
        assertFalse(kept.cancel(shop, plan.id(), START));
        assertTrue(kept.find(shop, plan.id()).orElseThrow().cancelled().isEmpty());
        assertFalse(kept.cancel(shop, UUID.randomUUID(), START));
    }

    @Test
    void anEndedBatchIsRemovedWithAllThatBelongsToIt() {
        BatchPlan done = sealed(1);
        kept.finish(done.id(), 0, result(0), START);
        BatchPlan cancelled = sealed(2);
        kept.cancel(shop, cancelled.id(), START);
        BatchPlan other = sealed(1);

        kept.remove(shop, done.id());
        kept.remove(shop, cancelled.id());
        kept.remove(shop, cancelled.id());

        assertEquals(
                List.of(other),
                kept.list(shop, 10, null).stream().map(KeptBatch::plan).toList());
        assertTrue(kept.chunk(done.id(), 0).isEmpty());
        assertTrue(kept.lines(shop, done.id(), 0).isEmpty());
        assertTrue(kept.totals(shop, done.id()).isEmpty());
        assertFalse(kept.finish(cancelled.id(), 0, result(0), START));
        assertTrue(kept.find(shop, other.id()).isPresent());
    }

    @Test
    void aRunningBatchIsNotRemoved() {
        BatchPlan plan = sealed(2);
        kept.finish(plan.id(), 0, result(0), START);
        kept.remove(shop, plan.id());
        assertTrue(kept.find(shop, plan.id()).isPresent());
        assertTrue(kept.chunk(plan.id(), 1).isPresent());
    }

    @Test
    void anotherShopsBatchDoesNotExist() {
        BatchPlan plan = sealed(2);
        kept.finish(plan.id(), 0, result(0), START);
        String other = "other-" + shop;

        assertTrue(kept.find(other, plan.id()).isEmpty());
        assertTrue(kept.list(other, 10, null).isEmpty());
        assertTrue(kept.lines(other, plan.id(), 0).isEmpty());
        assertTrue(kept.refusals(other, plan.id(), 0).isEmpty());
        assertTrue(kept.counts(other, plan.id(), 0).isEmpty());
        assertTrue(kept.totals(other, plan.id()).isEmpty());
        assertFalse(kept.cancel(other, plan.id(), START));
        kept.finish(plan.id(), 1, result(1), START);
        kept.remove(other, plan.id());
        assertTrue(kept.find(shop, plan.id()).isPresent());
    }

    @Test
    void theLatestIsListedFirstAPageAtATime() {
        List<BatchPlan> plans = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            plans.add(0, sealed(1));
        }
        assertEquals(
                plans.subList(0, 3),
                kept.list(shop, 3, null).stream().map(KeptBatch::plan).toList());
        assertEquals(
                plans.subList(3, 5),
                kept.list(shop, 3, plans.get(2).id()).stream()
                        .map(KeptBatch::plan)
                        .toList());
        assertTrue(kept.list(shop, 3, plans.get(4).id()).isEmpty());
        assertTrue(kept.list(shop, 3, UUID.randomUUID()).isEmpty());
    }

    @Test
    void uploadsOfOneInstantAreListedOnceEach() {
        List<UUID> ids = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            BatchPlan plan = plan(START);
            kept.begin(plan);
            kept.add(shop, plan.id(), 0, chunk(0));
            kept.seal(shop, plan.id(), end(1, START), null);
            ids.add(plan.id());
        }
        List<UUID> listed = new ArrayList<>();
        UUID after = null;
        for (List<KeptBatch> page = kept.list(shop, 2, null); !page.isEmpty(); page = kept.list(shop, 2, after)) {
            page.forEach(batch -> listed.add(batch.plan().id()));
            after = listed.get(listed.size() - 1);
        }
        assertEquals(ids.stream().sorted().toList(), listed.stream().sorted().toList());
    }

    @Test
    void aBatchAndItsKeyAreSettledTogether() {
        BatchPlan plan = plan(START);
        assertEquals(new IdempotencyKeys.Claim.Granted(), keys.claim(holder("k1"), START));
        kept.begin(plan);
        kept.add(shop, plan.id(), 0, chunk(0));
        kept.seal(
                shop,
                plan.id(),
                end(1, START),
                new SettledKey(shop, DOOR, "k1", "abcd", "{}".getBytes(StandardCharsets.UTF_8)));

        SettledKey use = ((IdempotencyKeys.Claim.Settled) keys.claim(holder("k1"), START)).use();
        assertEquals("abcd", use.digest());
        assertArrayEquals("{}".getBytes(StandardCharsets.UTF_8), use.answer());
        assertEquals(List.of(shop, DOOR, "k1"), List.of(use.shop(), use.door(), use.key()));
        keys.release(holder("k1"));
        assertInstanceOf(IdempotencyKeys.Claim.Settled.class, keys.claim(holder("k1"), START.plusSeconds(3600)));
    }

    @Test
    void aKeyThatAnotherSettledMeanwhileSealsNothing() {
        BatchPlan slow = plan(START);
        keys.claim(holder("k2"), START);
        kept.begin(slow);
        kept.add(shop, slow.id(), 0, chunk(0));
        Instant later = START.plusSeconds(IdempotencyKeys.LEASE_SECONDS + 1);
        BatchPlan quick = plan(later);
        assertEquals(new IdempotencyKeys.Claim.Granted(), keys.claim(holder("k2"), later));
        kept.begin(quick);
        kept.add(shop, quick.id(), 0, chunk(0));
        kept.seal(shop, quick.id(), end(1, later), new SettledKey(shop, DOOR, "k2", "aa", new byte[] {1}));

        assertThrows(
                KeyTakenException.class,
                () -> kept.seal(
                        shop, slow.id(), end(1, later), new SettledKey(shop, DOOR, "k2", "aa", new byte[] {2})));

        assertTrue(kept.find(shop, slow.id()).isEmpty());
        IdempotencyKeys.Claim.Settled settled = (IdempotencyKeys.Claim.Settled) keys.claim(holder("k2"), later);
        assertArrayEquals(new byte[] {1}, settled.use().answer());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void seededOrdersOfFinishingAddUpAlike(long seed) {
        BatchPlan plan = sealed(6);
        List<Integer> order = new ArrayList<>(List.of(0, 1, 2, 3, 4, 5));
        Collections.shuffle(order, new Random(seed));
        for (int chunk : order) {
            assertTrue(
                    kept.finish(plan.id(), chunk, result(chunk), clock.pass(Duration.ofMillis(5))),
                    () -> "seed " + seed + ", chunk " + chunk);
        }
        KeptBatch batch = kept.find(shop, plan.id()).orElseThrow();
        assertEquals(new Counts(21, 15, 6), batch.counts(), () -> "seed " + seed);
        List<byte[]> totals = kept.totals(shop, plan.id());
        assertEquals(6, totals.size(), () -> "seed " + seed);
        for (int chunk = 0; chunk < 6; chunk++) {
            assertArrayEquals(result(chunk).totals(), totals.get(chunk), () -> "seed " + seed);
        }
    }
}
