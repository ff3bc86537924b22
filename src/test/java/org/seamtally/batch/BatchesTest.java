package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Proxy;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.batch.KeptBatches.ChunkName;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.UnavailableException;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.BatchAnswer;
import org.seamtally.wire.BatchSummaryAnswer;
import org.seamtally.wire.Json;
import org.seamtally.wire.RefusedException;

class BatchesTest {

    private static final String SHOP = "local";
    private static final String ENGINE = "engine 1";
    private static final Instant START = Instant.parse("2031-03-04T05:06:07.089Z");

    private final SettableClock clock = new SettableClock(START);
    private final MemoryStore store = new MemoryStore(clock);
    private final AtomicInteger hints = new AtomicInteger();
    private final Batches batches = batches(ENGINE, new ChunkSize(7, 1 << 20));

    private Batches batches(String engine, ChunkSize size) {
        return new Batches(store, store, hints::incrementAndGet, work(), engine, clock, UUID::randomUUID, size);
    }

    private static Function<UnitSystem, FrameWork> work() {
        return units -> group -> Jobs.ENGINE.jobLines(group, units);
    }

    private static InputStream body(byte[] file) {
        return new ByteArrayInputStream(file);
    }

    private UUID accepted(Batches to, byte[] file) throws Exception {
        Received received = to.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(file), null);
        return assertInstanceOf(Received.Accepted.class, received).id();
    }

    private void workAll(Batches worker, String engine) {
        for (ChunkName chunk : store.open(engine)) {
            assertTrue(worker.work(chunk));
        }
    }

    @Test
    void stoppedItEndsTheFrameThatIsUnderWayAndKeepsNothingOfTheChunk() throws Exception {
        // so long that each is worked on by itself
        byte[] file = new String(Jobs.ndjson(1, 14), StandardCharsets.UTF_8)
                .replaceAll("(?<=\\S)\n", " ".repeat(40_000) + "\n")
                .getBytes(StandardCharsets.UTF_8);
        AtomicInteger worked = new AtomicInteger();
        Batches[] stopping = new Batches[1];
        stopping[0] = new Batches(
                store,
                store,
                hints::incrementAndGet,
                units -> group -> {
                    if (worked.addAndGet(group.size()) == 3) {
                        stopping[0].stop();
                    }
                    return Jobs.ENGINE.jobLines(group, units);
                },
                ENGINE,
                clock,
                UUID::randomUUID,
                new ChunkSize(7, 1 << 20));
        UUID id = accepted(stopping[0], file);
        for (ChunkName chunk : store.open(ENGINE)) {
            assertThrows(WorkStoppedException.class, () -> stopping[0].work(chunk));
        }
        assertEquals(3, worked.get());
        assertEquals(0, store.find(SHOP, id).orElseThrow().chunksDone());
        workAll(batches, ENGINE);
        assertArrayEquals(straight(file, Form.NDJSON, UnitSystem.SI), results(batches, id, Form.NDJSON));
    }

    private static byte[] written(KeptLines lines) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        lines.writeTo(out);
        return out.toByteArray();
    }

    private byte[] results(Batches from, UUID id, Form form) throws Exception {
        return written(from.results(SHOP, id, form, null).orElseThrow());
    }

    private static byte[] straight(byte[] file, Form form, UnitSystem units) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ResultSink sink = form == Form.CSV ? new CsvResults(out, units) : new NdjsonResults(out);
        BatchRun.run(Jobs.open(file), work().apply(units), 1, sink, Progress.UNWATCHED);
        return out.toByteArray();
    }

    private static List<String> lines(byte[] written) {
        return new String(written, StandardCharsets.UTF_8).lines().toList();
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "1, 7", "1, 100", "2, 1", "2, 7", "2, 100"})
    void resultsAreThoseOfTheStraightRunWhateverTheChunks(long seed, int size) throws Exception {
        byte[] file = Jobs.ndjson(seed, 150);
        Batches sized = batches(ENGINE, new ChunkSize(size, 1 << 20));
        UUID id = accepted(sized, file);
        assertEquals(
                (150 + size - 1) / size,
                store.find(SHOP, id).orElseThrow().sealed().chunks());
        workAll(sized, ENGINE);
        for (Form form : Form.values()) {
            assertArrayEquals(straight(file, form, UnitSystem.SI), results(sized, id, form), () -> "seed " + seed);
            assertArrayEquals(
                    straight(file, form, UnitSystem.US),
                    written(sized.results(SHOP, id, form, UnitSystem.US).orElseThrow()),
                    () -> "seed " + seed);
        }
    }

    @Test
    void aChunkIsClosedByBytesToo() throws Exception {
        Batches small = batches(ENGINE, new ChunkSize(100, 1000));
        UUID id = accepted(small, Jobs.ndjson(5, 100));
        int chunks = store.find(SHOP, id).orElseThrow().sealed().chunks();
        assertTrue(chunks > 10, () -> chunks + " chunks");
        workAll(small, ENGINE);
        assertArrayEquals(straight(Jobs.ndjson(5, 100), Form.NDJSON, UnitSystem.SI), results(small, id, Form.NDJSON));
    }

    /** Workers that pick any chunk in any order, some again and at once: what a replica that was killed leaves behind. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void seededInterleavingsOfWorkersGiveOneResult(long seed) throws Exception {
        byte[] file = Jobs.ndjson(seed, 100);
        UUID id = accepted(batches, file);
        List<ChunkName> picks = new ArrayList<>(store.open(ENGINE));
        picks.addAll(picks);
        picks.addAll(picks.subList(0, 10));
        Collections.shuffle(picks, new Random(seed));
        ExecutorService threads = Executors.newFixedThreadPool(3);
        try {
            List<Callable<Boolean>> tries = picks.stream()
                    .<Callable<Boolean>>map(chunk -> () -> batches.work(chunk))
                    .toList();
            for (Future<Boolean> each : threads.invokeAll(tries)) {
                assertTrue(each.get(), () -> "seed " + seed);
            }
        } finally {
            threads.shutdownNow();
        }
        BatchAnswer done = batches.status(SHOP, id).orElseThrow();
        assertEquals("done", done.state());
        assertEquals(100, done.counts().read());
        assertEquals(100, done.counts().done() + done.counts().refused());
        assertArrayEquals(
                straight(file, Form.NDJSON, UnitSystem.SI), results(batches, id, Form.NDJSON), () -> "seed " + seed);
    }

    @Test
    void beforeTheEndResultsGoUpToTheFirstGap() throws Exception {
        byte[] file = Jobs.ndjson(6, 30);
        UUID id = accepted(batches, file);
        for (int chunk : new int[] {0, 1, 3}) {
            batches.work(new ChunkName(SHOP, id, chunk));
        }
        List<String> all = lines(straight(file, Form.NDJSON, UnitSystem.SI));
        List<String> some = lines(results(batches, id, Form.NDJSON));
        assertEquals(all.subList(0, 14), some.subList(0, 14));
        assertEquals(15, some.size());
        JsonNode trailer = Json.mapper().readTree(some.get(14)).path("trailer");
        assertEquals(14, trailer.path("read").intValue());
        assertEquals(
                14, trailer.path("done").intValue() + trailer.path("refused").intValue());
        assertFalse(trailer.path("complete").booleanValue());

        List<String> refusals = lines(written(batches.refusals(SHOP, id).orElseThrow()));
        assertEquals(
                all.subList(0, 14).stream()
                        .filter(line -> line.contains("\"problem\":"))
                        .toList(),
                refusals.subList(0, refusals.size() - 1));
        assertEquals(
                trailer,
                Json.mapper().readTree(refusals.get(refusals.size() - 1)).path("trailer"));
    }

    @Test
    void statesAndPaceAreDerived() throws Exception {
        UUID id = accepted(batches, Jobs.ndjson(7, 28));
        assertEquals(1, hints.get());
        BatchAnswer waiting = batches.status(SHOP, id).orElseThrow();
        assertEquals("waiting", waiting.state());
        assertEquals(new BatchAnswer.Chunks(4, 0), waiting.chunks());
        assertEquals(28, waiting.counts().frames());
        assertNull(waiting.framesPerSecond());
        assertNull(waiting.timeLeft());
        assertEquals(START.toString(), waiting.created());

        clock.pass(Duration.ofSeconds(2));
        batches.work(new ChunkName(SHOP, id, 0));
        BatchAnswer first = batches.status(SHOP, id).orElseThrow();
        assertEquals("running", first.state());
        assertEquals(3.5, first.framesPerSecond());
        assertEquals(6, first.timeLeft().value());
        assertEquals("s", first.timeLeft().unit());

        clock.pass(Duration.ofSeconds(1));
        batches.work(new ChunkName(SHOP, id, 1));
        BatchAnswer second = batches.status(SHOP, id).orElseThrow();
        assertEquals(7, second.framesPerSecond());
        assertEquals(2, second.timeLeft().value());

        clock.pass(Duration.ofSeconds(3));
        batches.work(new ChunkName(SHOP, id, 2));
        BatchAnswer third = batches.status(SHOP, id).orElseThrow();
        assertEquals(3.5, third.framesPerSecond());
        assertEquals(2, third.timeLeft().value());

        batches.work(new ChunkName(SHOP, id, 3));
        BatchAnswer done = batches.status(SHOP, id).orElseThrow();
        assertEquals("done", done.state());
        assertNull(done.timeLeft());
        assertEquals(List.of(done), batches.list(SHOP, 10, null));
    }

    @Test
    void aRunningBatchIsCancelledAndAnEndedOneRemoved() throws Exception {
        UUID id = accepted(batches, Jobs.ndjson(8, 30));
        batches.work(new ChunkName(SHOP, id, 0));
        assertEquals(Removal.CANCELLED, batches.remove(SHOP, id));
        assertEquals("cancelled", batches.status(SHOP, id).orElseThrow().state());
        assertTrue(batches.work(new ChunkName(SHOP, id, 1)));
        List<String> kept = lines(results(batches, id, Form.NDJSON));
        assertEquals(8, kept.size());
        assertTrue(kept.get(7).contains("\"complete\":false"));
        assertEquals(Removal.REMOVED, batches.remove(SHOP, id));
        assertEquals(Removal.UNKNOWN, batches.remove(SHOP, id));
        assertTrue(batches.status(SHOP, id).isEmpty());
        assertTrue(batches.results(SHOP, id, Form.CSV, null).isEmpty());
        assertTrue(batches.refusals(SHOP, id).isEmpty());
        assertTrue(batches.summary(SHOP, id).isEmpty());
        assertTrue(batches.work(new ChunkName(SHOP, id, 1)));
    }

    @Test
    void anotherEnginesBatchIsLeft() throws Exception {
        UUID id = accepted(batches, Jobs.ndjson(9, 10));
        Batches next = batches("engine 2", ChunkSize.USUAL);
        assertFalse(next.work(new ChunkName(SHOP, id, 0)));
        assertEquals("waiting", batches.status(SHOP, id).orElseThrow().state());
        workAll(batches, ENGINE);
        assertArrayEquals(results(batches, id, Form.NDJSON), results(next, id, Form.NDJSON));
        next.results(SHOP, id, Form.NDJSON, UnitSystem.SI).orElseThrow();
        RefusedException refused =
                assertThrows(RefusedException.class, () -> next.results(SHOP, id, Form.NDJSON, UnitSystem.US));
        assertEquals(409, refused.problem().status());
        assertEquals("/problems/other-engine", refused.problem().type());
    }

    @Test
    void aKeyCountsOnce() throws Exception {
        byte[] file = Jobs.ndjson(10, 20);
        byte[] settings = "{}".getBytes(StandardCharsets.UTF_8);
        Received first = batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, settings, body(file), "k");
        byte[] answer = assertInstanceOf(Received.Accepted.class, first).answer();
        workAll(batches, ENGINE);
        Received again = batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, settings, body(file), "k");
        assertArrayEquals(
                answer, assertInstanceOf(Received.Replayed.class, again).answer());

        byte[] other = Jobs.ndjson(11, 20);
        Received.OtherBody otherBody = new Received.OtherBody();
        assertEquals(otherBody, batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, settings, body(other), "k"));
        assertEquals(otherBody, batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
        assertEquals(otherBody, batches.receive(SHOP, null, UnitSystem.US, Form.NDJSON, settings, body(file), "k"));
        assertEquals(otherBody, batches.receive(SHOP, null, UnitSystem.SI, Form.CSV, settings, body(file), "k"));
        assertEquals(1, store.uploads());
        assertEquals(1, hints.get());

        assertInstanceOf(
                Received.Accepted.class,
                batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, settings, body(file), "k2"));
        assertEquals(2, store.uploads());
    }

    /** A body that does something halfway. */
    private static InputStream halfway(byte[] file, Runnable then) {
        return new ByteArrayInputStream(file) {
            private boolean done;

            @Override
            public synchronized int read(byte[] into, int offset, int length) {
                if (!done && pos > count / 2) {
                    done = true;
                    then.run();
                }
                return super.read(into, offset, Math.min(length, 256));
            }
        };
    }

    @Test
    void anUploadUnderWayHoldsItsKeyHoweverLongItTakes() throws Exception {
        byte[] file = Jobs.ndjson(12, 40);
        List<Received> meanwhile = new ArrayList<>();
        Runnable second = () -> {
            try {
                meanwhile.add(batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
            } catch (IOException | RefusedException e) {
                throw new IllegalStateException(e);
            }
        };
        InputStream slow = new ByteArrayInputStream(file) {
            @Override
            public synchronized int read(byte[] into, int offset, int length) {
                clock.pass(Duration.ofSeconds(IdempotencyKeys.LEASE_SECONDS / 2));
                if (pos > count / 2 && meanwhile.isEmpty()) {
                    second.run();
                }
                return super.read(into, offset, Math.min(length, 512));
            }
        };
        Received first = batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, slow, "k");
        assertInstanceOf(Received.Accepted.class, first);
        assertEquals(List.of(new Received.InFlight()), meanwhile);
        assertEquals(1, store.uploads());
    }

    @Test
    void ofTwoUploadsWithAKeyWhoseLeaseRanOutOneIsKept() throws Exception {
        byte[] file = Jobs.ndjson(13, 40);
        List<Received> meanwhile = new ArrayList<>();
        // no read ends while the lease runs out: nothing renews it
        InputStream stalled = halfway(file, () -> {
            clock.pass(Duration.ofSeconds(IdempotencyKeys.LEASE_SECONDS + 1));
            try {
                meanwhile.add(batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
            } catch (IOException | RefusedException e) {
                throw new IllegalStateException(e);
            }
        });
        Received late = batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, stalled, "k");
        byte[] answer =
                assertInstanceOf(Received.Accepted.class, meanwhile.get(0)).answer();
        assertArrayEquals(
                answer, assertInstanceOf(Received.Replayed.class, late).answer());
        assertEquals(1, store.uploads());
    }

    /** A body that brings a piece at a time, some time apart, and something between two pieces. */
    private InputStream slowly(byte[] file, int piece, Duration apart, Runnable between) {
        return new ByteArrayInputStream(file) {
            @Override
            public synchronized int read(byte[] into, int offset, int length) {
                clock.pass(apart);
                int got = super.read(into, offset, Math.min(length, piece));
                between.run();
                return got;
            }
        };
    }

    @Test
    void anUploadLivesWhileItsBytesArriveThoughNoChunkIsFull() throws Exception {
        byte[] file = Jobs.ndjson(18, 40);
        Batches oneChunk = batches(ENGINE, ChunkSize.USUAL);
        AtomicInteger swept = new AtomicInteger();
        Instant begun = clock.instant();
        InputStream slow = slowly(
                file,
                file.length / 50,
                Duration.ofSeconds(59),
                () -> swept.addAndGet(store.discardBrokenOff(clock.instant().minus(KeptBatches.BROKEN_OFF))));
        assertInstanceOf(
                Received.Accepted.class, oneChunk.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, slow, null));
        assertTrue(begun.plus(KeptBatches.BROKEN_OFF).isBefore(clock.instant()), "it took too long for a silent one");
        assertEquals(0, swept.get());
        assertEquals(1, store.uploads());
    }

    @Test
    void anUploadWhoseClaimWasTakenOverLeavesItToItsNewOwnerWhenItFails() throws Exception {
        byte[] file = Jobs.ndjson(19, 40);
        KeyHolder next = new KeyHolder(SHOP, "batches", "k", UUID.randomUUID());
        InputStream late = halfway(file, () -> {
            clock.pass(Duration.ofSeconds(IdempotencyKeys.LEASE_SECONDS + 1));
            assertEquals(new IdempotencyKeys.Claim.Granted(), store.claim(next, clock.instant()));
            throw new IllegalStateException("a bug");
        });
        assertThrows(
                IllegalStateException.class,
                () -> batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, late, "k"));
        assertEquals(
                new Received.InFlight(),
                batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
    }

    @Test
    void anUploadSurvivesThatNobodyCouldBeToldOfIt() throws Exception {
        byte[] file = Jobs.ndjson(20, 40);
        AtomicInteger told = new AtomicInteger();
        Batches away = batchesOn((method, arguments) -> {
            if (method.equals("touch")) {
                told.incrementAndGet();
                throw new UnavailableException("away", null);
            }
        });
        InputStream slow = slowly(file, file.length / 4, Duration.ofMinutes(2), () -> {});
        assertInstanceOf(
                Received.Accepted.class, away.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, slow, null));
        assertTrue(told.get() > 0);
    }

    /** Is told of a call of the store before it is carried out. */
    private interface Listener {
        void called(String method, Object[] arguments);
    }

    private Batches batchesOn(Listener listener) {
        KeptBatches heard = (KeptBatches) Proxy.newProxyInstance(
                KeptBatches.class.getClassLoader(), new Class<?>[] {KeptBatches.class}, (proxy, method, arguments) -> {
                    listener.called(method.getName(), arguments);
                    return method.invoke(store, arguments);
                });
        return new Batches(heard, store, hints::incrementAndGet, work(), ENGINE, clock, UUID::randomUUID);
    }

    @Test
    void refusalsAreReadWithoutWhatWasDone() throws Exception {
        UUID id = accepted(batches, Jobs.ndjson(21, 30));
        workAll(batches, ENGINE);
        Set<String> called = new TreeSet<>();
        Batches heard = batchesOn((method, arguments) -> called.add(method));
        assertTrue(written(heard.refusals(SHOP, id).orElseThrow()).length > 0);
        assertEquals(Set.of("find", "refusals"), called);
        called.clear();
        heard.results(SHOP, id, Form.NDJSON, UnitSystem.US).orElseThrow().writeTo(new ByteArrayOutputStream());
        assertEquals(Set.of("find", "chunk", "counts"), called, "they are worked out anew");
    }

    @Test
    void aBatchWhoseEngineIsGoneIsSeenToWaitForItAndCanBeHadDone() throws Exception {
        UUID id = accepted(batches, Jobs.ndjson(22, 28));
        clock.pass(Duration.ofSeconds(1));
        batches.work(new ChunkName(SHOP, id, 0));
        store.engineGone(ENGINE);
        Batches next = batches("engine 2", ChunkSize.USUAL);
        BatchAnswer waiting = next.status(SHOP, id).orElseThrow();
        assertEquals("waiting-for-engine", waiting.state());
        assertEquals(ENGINE, waiting.engine());
        assertNull(waiting.timeLeft());
        assertFalse(next.work(new ChunkName(SHOP, id, 1)));
        assertEquals(Removal.CANCELLED, next.remove(SHOP, id));
        assertEquals("cancelled", next.status(SHOP, id).orElseThrow().state());
        assertEquals(Removal.REMOVED, next.remove(SHOP, id));
        assertEquals(0, store.uploads());
    }

    @Test
    void aBatchBearsItsName() throws Exception {
        byte[] file = Jobs.ndjson(23, 5);
        Received named = batches.receive(SHOP, "night.ndjson", UnitSystem.SI, Form.NDJSON, null, body(file), "k");
        UUID id = assertInstanceOf(Received.Accepted.class, named).id();
        assertEquals("night.ndjson", batches.status(SHOP, id).orElseThrow().name());
        assertEquals("night.ndjson", batches.list(SHOP, 1, null).get(0).name());
        assertInstanceOf(
                Received.Replayed.class,
                batches.receive(SHOP, "night.ndjson", UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
        assertEquals(
                new Received.OtherBody(),
                batches.receive(SHOP, "day.ndjson", UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
        assertEquals(
                new Received.OtherBody(),
                batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
        assertNull(batches.status(SHOP, accepted(batches, file)).orElseThrow().name());
    }

    @Test
    void anUploadThatFailsLeavesNothing() throws Exception {
        byte[] file = Jobs.ndjson(14, 40);
        assertThrows(
                RefusedException.class,
                () -> batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(new byte[0]), "k"));
        assertThrows(
                RefusedException.class,
                () -> batches.receive(
                        SHOP,
                        null,
                        UnitSystem.SI,
                        Form.NDJSON,
                        "{\"steel\": 1}".getBytes(StandardCharsets.UTF_8),
                        body(file),
                        "k"));
        IOException gone = new IOException("the client is gone");
        InputStream broken = new java.io.SequenceInputStream(body(file), new InputStream() {
            @Override
            public int read() throws IOException {
                throw gone;
            }
        });
        assertSame(
                gone,
                assertThrows(
                        IOException.class,
                        () -> batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, broken, "k")));
        InputStream bug = halfway(file, () -> {
            throw new IllegalStateException("a bug");
        });
        assertThrows(
                IllegalStateException.class,
                () -> batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, bug, "k"));
        assertEquals(0, store.uploads());
        assertEquals(0, store.keys());
        assertEquals(0, hints.get());
        assertInstanceOf(
                Received.Accepted.class,
                batches.receive(SHOP, null, UnitSystem.SI, Form.NDJSON, null, body(file), "k"));
    }

    @Test
    void aBatchThatIsKeptIsAcceptedThoughNobodyCanBeTold() throws Exception {
        Batches alone = new Batches(
                store,
                store,
                () -> {
                    throw new UnavailableException("away", null);
                },
                work(),
                ENGINE,
                clock,
                UUID::randomUUID);
        accepted(alone, Jobs.ndjson(15, 5));
        assertEquals(1, store.open(ENGINE).size());
    }

    @Test
    void aFaultOfTheProgramKeepsNothingOfAChunk() throws Exception {
        UUID id = accepted(batches, Jobs.ndjson(16, 5));
        Batches faulty = new Batches(
                store,
                store,
                () -> {},
                units -> frame -> {
                    throw new IllegalStateException("a bug");
                },
                ENGINE,
                clock,
                UUID::randomUUID);
        assertThrows(IllegalStateException.class, () -> faulty.work(new ChunkName(SHOP, id, 0)));
        assertEquals(1, store.open(ENGINE).size());
        workAll(batches, ENGINE);
        assertEquals("done", batches.status(SHOP, id).orElseThrow().state());
    }

    private static BigDecimal sum(List<JsonNode> estimates, String pointer) {
        return estimates.stream()
                .map(estimate -> estimate.at(pointer))
                .filter(node -> !node.isMissingNode())
                .map(node -> new BigDecimal(node.asText()))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static double nine(BigDecimal sum) {
        return sum.round(new MathContext(9)).doubleValue();
    }

    @Test
    void theSummaryIsTheSumOfTheLines() throws Exception {
        UUID id = accepted(batches, Jobs.ndjson(17, 120));
        workAll(batches, ENGINE);
        List<JsonNode> estimates = new ArrayList<>();
        for (String line : lines(results(batches, id, Form.NDJSON))) {
            JsonNode node = Json.mapper().readTree(line);
            if (node.has("estimate")) {
                estimates.add(node.path("estimate"));
            }
        }
        BatchSummaryAnswer summary = batches.summary(SHOP, id).orElseThrow();
        assertEquals(estimates.size(), summary.batch().counts().done());
        assertEquals(
                nine(sum(estimates, "/forQuantity/filler/consumed/value")),
                summary.filler().consumed().value());
        assertEquals("g", summary.filler().consumed().unit());
        assertEquals(
                nine(sum(estimates, "/forQuantity/gas/total/value")),
                summary.gas().total().value());
        BigDecimal wasted =
                sum(estimates, "/forQuantity/gas/startSurge/value").add(sum(estimates, "/forQuantity/gas/leak/value"));
        assertEquals(nine(wasted), summary.gas().surgeAndLeak().value());
        assertTrue(summary.gas().surgeAndLeakShare() > 0 && summary.gas().surgeAndLeakShare() < 1);
        assertEquals(
                nine(sum(estimates, "/forQuantity/labour/total/value")),
                summary.labour().total().value());
        assertEquals(
                nine(sum(estimates, "/forQuantity/arc/time/value")),
                summary.arc().time().value());
        assertEquals(0, summary.preheat().energy().value());

        assertEquals(
                List.of("EUR", "USD"),
                summary.money().stream().map(BatchSummaryAnswer.Money::currency).toList());
        for (BatchSummaryAnswer.Money money : summary.money()) {
            List<JsonNode> priced = estimates.stream()
                    .filter(estimate ->
                            estimate.at("/cost/currency").textValue().equals(money.currency()))
                    .toList();
            assertEquals(sum(priced, "/cost/total").toPlainString(), money.total());
            List<String> dearest = priced.stream()
                    .map(estimate -> new BigDecimal(estimate.at("/cost/total").textValue()))
                    .sorted(Collections.reverseOrder())
                    .limit(10)
                    .map(BigDecimal::toPlainString)
                    .toList();
            assertEquals(
                    dearest,
                    summary.dearest().stream()
                            .filter(dear -> dear.currency().equals(money.currency()))
                            .map(BatchSummaryAnswer.Dear::total)
                            .toList());
        }
        assertEquals(
                List.of("no-load", "no-procedure"),
                summary.cautions().stream().map(caution -> caution.cause()).toList());
        assertNotEquals(0, Json.mapper().writeValueAsBytes(summary).length);
    }

    @Test
    void aBatchOfRefusedFramesHasASummaryOfNothing() throws Exception {
        UUID id = accepted(batches, "{}\n{\n".getBytes(StandardCharsets.UTF_8));
        workAll(batches, ENGINE);
        BatchSummaryAnswer summary = batches.summary(SHOP, id).orElseThrow();
        assertEquals(2, summary.batch().counts().refused());
        assertEquals(0, summary.gas().total().value());
        assertEquals(0, summary.gas().surgeAndLeakShare());
        assertEquals("L", summary.gas().total().unit());
        assertEquals(List.of(), summary.money());
        assertEquals(List.of(), summary.dearest());
    }
}
