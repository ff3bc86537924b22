package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** So many at a time, a few more wait by the size of what they sent, the rest is told to come again. */
class WaitingLineTest {

    private static final Duration LONG = Duration.ofMinutes(1);

    private final AtomicLong now = new AtomicLong();

    private static InputStream body(long bytes) {
        return new ByteArrayInputStream(new byte[Math.toIntExact(bytes)]);
    }

    // each waits on a thread of its own: the common pool may have one alone
    private static final java.util.concurrent.Executor OWN_THREAD = task -> new Thread(task).start();

    /** Takes a place, and keeps it until the latch is open. */
    private static CompletableFuture<Integer> occupy(WaitingLine line, InputStream body, CountDownLatch end) {
        return CompletableFuture.supplyAsync(
                () -> {
                    try {
                        return line.<Integer, InterruptedException>work(body, arrived -> {
                            end.await();
                            return arrived.readAllBytes().length;
                        });
                    } catch (IOException | InterruptedException e) {
                        throw new IllegalStateException(e);
                    }
                },
                OWN_THREAD);
    }

    private static void await(java.util.function.BooleanSupplier state) throws InterruptedException {
        long end = System.nanoTime() + LONG.toNanos();
        while (!state.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "it never came to that");
            Thread.sleep(1);
        }
    }

    private static ProblemException refused(WaitingLine line, InputStream body) {
        return assertThrows(ProblemException.class, () -> line.<Integer, RuntimeException>work(body, arrived -> 0));
    }

    @Test
    void asManyAreWorkedOutAsThereArePlacesAndTheRestWaitsInOrder() throws Exception {
        WaitingLine line = new WaitingLine(2, 10 * WaitingLine.EACH, LONG, now::get);
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Integer> one = occupy(line, body(3), end);
        CompletableFuture<Integer> two = occupy(line, body(4), end);
        await(() -> line.working() == 2);
        CompletableFuture<Integer> three = occupy(line, body(5), end);
        await(() -> line.waiting() == 1);
        assertEquals(WaitingLine.EACH + 5, line.waitingBytes());
        assertFalse(three.isDone());

        end.countDown();
        assertEquals(3, one.get(1, TimeUnit.MINUTES));
        assertEquals(4, two.get(1, TimeUnit.MINUTES));
        assertEquals(5, three.get(1, TimeUnit.MINUTES));
        await(() -> line.working() == 0);
        assertEquals(0, line.waiting());
        assertEquals(0, line.waitingBytes());
    }

    @Test
    void whatIsOverTheLimitIsSentAwayAndLeavesNothingBehind() throws Exception {
        // room for one body of 100 bytes in the line, to the byte
        WaitingLine line = new WaitingLine(1, WaitingLine.EACH + 100, LONG, now::get);
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Integer> working = occupy(line, body(1), end);
        await(() -> line.working() == 1);
        assertFalse(line.isFull());

        CompletableFuture<Integer> waiting = occupy(line, body(100), end);
        await(() -> line.waiting() == 1);
        assertFalse(line.isFull());
        now.addAndGet(WaitingLine.PASSING);
        assertTrue(line.isFull());
        ProblemException over = refused(line, body(0));
        assertEquals(503, over.problem().status());
        assertEquals("/problems/busy", over.problem().type());
        assertEquals(WaitingLine.EACH + 100, line.waitingBytes());

        end.countDown();
        assertEquals(1, working.get(1, TimeUnit.MINUTES));
        assertEquals(100, waiting.get(1, TimeUnit.MINUTES));
        assertEquals(0, line.waitingBytes());
        assertFalse(line.isFull());
        assertEquals(7, line.<Integer, RuntimeException>work(body(7), arrived -> arrived.readAllBytes().length));
    }

    @Test
    void whoeverComesWhereAsMuchWaitsAsMayIsRefusedToTheByte() throws Exception {
        WaitingLine line = new WaitingLine(1, 2 * WaitingLine.EACH + 100, LONG, now::get);
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Integer> working = occupy(line, body(1), end);
        await(() -> line.working() == 1);
        CompletableFuture<Integer> waiting = occupy(line, body(50), end);
        await(() -> line.waiting() == 1);
        now.addAndGet(WaitingLine.PASSING);

        CompletableFuture<Integer> fits = occupy(line, body(50), end);
        await(() -> line.waiting() == 2);
        refused(line, body(0));
        end.countDown();
        working.get(1, TimeUnit.MINUTES);
        waiting.get(1, TimeUnit.MINUTES);
        assertEquals(50, fits.get(1, TimeUnit.MINUTES));
    }

    @Test
    void aBurstMayWaitForAWhile() throws Exception {
        WaitingLine line = new WaitingLine(1, WaitingLine.EACH, LONG, now::get);
        CountDownLatch end = new CountDownLatch(1);
        List<CompletableFuture<Integer>> all = new ArrayList<>();
        all.add(occupy(line, body(0), end));
        await(() -> line.working() == 1);
        for (int i = 1; i <= WaitingLine.BURST; i++) {
            int waiting = i;
            all.add(occupy(line, body(0), end));
            await(() -> line.waiting() == waiting);
        }
        assertTrue(line.isFull());
        refused(line, body(0));
        end.countDown();
        for (CompletableFuture<Integer> one : all) {
            one.get(1, TimeUnit.MINUTES);
        }
        assertFalse(line.isFull());
    }

    @Test
    void aLineThatIsEmptyForAMomentBeginsNoBurst() throws Exception {
        WaitingLine line = new WaitingLine(1, WaitingLine.EACH, LONG, now::get);
        CountDownLatch first = new CountDownLatch(1);
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Integer> working = occupy(line, body(0), first);
        await(() -> line.working() == 1);
        CompletableFuture<Integer> next = occupy(line, body(0), end);
        await(() -> line.waiting() == 1);
        now.addAndGet(WaitingLine.PASSING);
        first.countDown();
        working.get(1, TimeUnit.MINUTES);
        await(() -> line.waiting() == 0 && line.working() == 1);

        CompletableFuture<Integer> waiting = occupy(line, body(0), end);
        await(() -> line.waiting() == 1);
        assertTrue(line.isFull());
        end.countDown();
        next.get(1, TimeUnit.MINUTES);
        waiting.get(1, TimeUnit.MINUTES);

        // with a place free again, as at first
        await(() -> line.working() == 0);
        now.addAndGet(WaitingLine.PASSING);
        CountDownLatch later = new CountDownLatch(1);
        CompletableFuture<Integer> again = occupy(line, body(0), later);
        await(() -> line.working() == 1);
        CompletableFuture<Integer> behind = occupy(line, body(0), later);
        await(() -> line.waiting() == 1);
        assertFalse(line.isFull());
        later.countDown();
        again.get(1, TimeUnit.MINUTES);
        behind.get(1, TimeUnit.MINUTES);
    }

    @Test
    void aBodyLargerThanAllThatMayWaitIsTakenWhereNothingElseWaits() throws Exception {
        WaitingLine line = new WaitingLine(1, 10, LONG, now::get);
        assertEquals(
                100_000, line.<Integer, RuntimeException>work(body(100_000), arrived -> arrived.readAllBytes().length));
    }

    @Test
    void aSenderWhoDawdlesTakesNoPlace() throws Exception {
        WaitingLine line = new WaitingLine(1, 100 * WaitingLine.EACH, LONG, now::get);
        CountDownLatch dawdling = new CountDownLatch(1);
        CountDownLatch end = new CountDownLatch(1);
        InputStream slow = new InputStream() {
            @Override
            public int read() throws IOException {
                dawdling.countDown();
                try {
                    end.await();
                } catch (InterruptedException e) {
                    throw new IOException(e);
                }
                return -1;
            }
        };
        CompletableFuture<Integer> slowly = occupy(line, slow, end);
        dawdling.await();
        assertEquals(0, line.working());
        assertEquals(5, line.<Integer, RuntimeException>work(body(5), arrived -> arrived.readAllBytes().length));
        end.countDown();
        assertEquals(0, slowly.get(1, TimeUnit.MINUTES));
    }

    @Test
    void whoeverHasNoPlaceInTimeIsSentAway() throws Exception {
        WaitingLine line = new WaitingLine(1, 100 * WaitingLine.EACH, Duration.ZERO, now::get);
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Integer> working = occupy(line, body(1), end);
        await(() -> line.working() == 1);
        assertEquals(503, refused(line, body(1)).problem().status());
        assertEquals(0, line.waiting());
        assertEquals(0, line.waitingBytes());
        end.countDown();
        working.get(1, TimeUnit.MINUTES);
    }

    @Test
    void whatFailsGivesItsPlaceBack() {
        WaitingLine line = new WaitingLine(1, 100, LONG, now::get);
        assertThrows(
                IllegalStateException.class,
                () -> line.<Integer, RuntimeException>work(body(1), arrived -> {
                    throw new IllegalStateException();
                }));
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException();
            }
        };
        assertThrows(IOException.class, () -> line.<Integer, RuntimeException>work(broken, arrived -> 0));
        assertEquals(0, line.working());
        assertEquals(0, line.waitingBytes());
    }

    @Test
    void courtesyEndsWhenNobodyWaitsAndAtTheLatestAfterItsTime() throws Exception {
        WaitingLine line = new WaitingLine(1, 100 * WaitingLine.EACH, LONG, now::get);
        line.letPass(LONG);
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Integer> working = occupy(line, body(1), end);
        await(() -> line.working() == 1);
        CompletableFuture<Integer> waiting = occupy(line, body(1), end);
        await(() -> line.waiting() == 1);
        line.letPass(Duration.ofMillis(1));
        assertEquals(1, line.waiting());

        CompletableFuture<Void> polite =
                CompletableFuture.runAsync(() -> line.letPass(Duration.ofHours(1)), OWN_THREAD);
        assertThrows(java.util.concurrent.TimeoutException.class, () -> polite.get(20, TimeUnit.MILLISECONDS));
        end.countDown();
        working.get(1, TimeUnit.MINUTES);
        waiting.get(1, TimeUnit.MINUTES);
        try {
            polite.get(1, TimeUnit.MINUTES);
        } catch (ExecutionException e) {
            throw new AssertionError(e);
        }
    }
}
