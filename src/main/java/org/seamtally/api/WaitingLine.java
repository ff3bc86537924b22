package org.seamtally.api;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;
import org.seamtally.wire.ProblemReport;

/**
 * Lets so many requests be worked out at a time and a few more wait, by the size of what they sent: a body of ten thousand
 * joints takes the place of thousands with one. More would make all of them late and none of them sooner, so that they are
 * told to come again. A sender who dawdles takes no place: what has arrived counts, and a place is taken when all of it has.
 *
 * <p>A burst may wait in a line {@value #BURST} times as long; where no place has been free for a while, more comes than
 * can be worked out, and the line is kept short: it would else be long for as long as that lasts, and gain nobody anything.
 */
final class WaitingLine {

    /** What a request costs besides its body, in bytes of body: HTTP, threads, a small answer. A decision of this project. */
    static final long EACH = 2_048;

    /** How many times as much may wait in a burst. */
    static final long BURST = 8;

    /** Nanoseconds after which it is no burst any more: longer than the program stands still by itself. */
    static final long PASSING = 250_000_000L;

    /** Seconds after which to ask again: a processor works off what waits within a fraction of one. */
    static final int RETRY_AFTER_S = 1;

    private final int atOnce;
    private final long most;
    private final Duration longestWait;
    private final Semaphore places;
    private final AtomicLong waitingBytes = new AtomicLong();
    private final AtomicInteger waiting = new AtomicInteger();
    private final LongSupplier nanoseconds;
    private volatile long lastFree;

    /**
     * @param atOnce requests that are worked out at a time, at least 1
     * @param mostBytes that may wait for each of those, at least 1
     * @param longestWait for a place
     * @param nanoseconds since some moment
     */
    WaitingLine(int atOnce, long mostBytes, Duration longestWait, LongSupplier nanoseconds) {
        if (atOnce < 1 || mostBytes < 1 || longestWait.isNegative()) {
            throw new IllegalArgumentException("at least one at a time, one byte waiting, and no wait below nought");
        }
        this.atOnce = atOnce;
        this.most = Math.multiplyExact(mostBytes, atOnce);
        this.longestWait = longestWait;
        this.nanoseconds = nanoseconds;
        this.lastFree = nanoseconds.getAsLong();
        // in the order of arrival: nobody waits for ever
        this.places = new Semaphore(atOnce, true);
    }

    /** Requests that are worked out now. */
    int working() {
        return atOnce - places.availablePermits();
    }

    /** Requests that wait for a place. */
    int waiting() {
        return waiting.get();
    }

    /** What has arrived and is not worked on, bytes. */
    long waitingBytes() {
        return waitingBytes.get();
    }

    /** Whether one that arrives now would be sent away: told before its body is read. */
    boolean isFull() {
        return waitingBytes.get() >= limit();
    }

    private long limit() {
        noteFree();
        return nanoseconds.getAsLong() - lastFree < PASSING ? most * BURST : most;
    }

    /** A place is free where nobody is about to take it. */
    private void noteFree() {
        if (waiting.get() == 0 && places.availablePermits() > 0) {
            lastFree = nanoseconds.getAsLong();
        }
    }

    /** Work on a body that has arrived. */
    interface Work<A, X extends Exception> {
        A on(InputStream body) throws IOException, X;
    }

    /**
     * Reads a body to its end, waits for a place, and does the work.
     *
     * @throws ProblemException 503 where too much waits already, or a place was not free in time
     */
    <A, X extends Exception> A work(InputStream body, Work<A, X> work) throws IOException, X {
        try (Visit visit = new Visit()) {
            byte[] arrived = visit.read(body);
            visit.takePlace();
            return work.on(new ByteArrayInputStream(arrived));
        }
    }

    /** Waits until nobody waits for a place, or for so long. */
    void letPass(Duration atMost) {
        long end = System.nanoTime() + atMost.toNanos();
        synchronized (waiting) {
            long left = end - System.nanoTime();
            while (waiting.get() > 0 && left > 0) {
                try {
                    TimeUnit.NANOSECONDS.timedWait(waiting, left);
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                    return;
                }
                left = end - System.nanoTime();
            }
        }
    }

    static ProblemReport busyReport() {
        return ProblemReport.of(
                503, "busy", "More estimates are asked for than can be worked out.", "Ask again in a moment.");
    }

    /** One request's stay: what it holds goes when it is closed. */
    private final class Visit implements AutoCloseable {

        private long held;
        private boolean counted;
        private boolean working;

        byte[] read(InputStream body) throws IOException {
            hold(EACH);
            ByteArrayOutputStream arrived = new ByteArrayOutputStream(8_192);
            new FilterInputStream(body) {
                @Override
                public int read(byte[] buffer, int offset, int length) throws IOException {
                    int got = super.read(buffer, offset, length);
                    hold(Math.max(0, got));
                    return got;
                }
            }.transferTo(arrived);
            return arrived.toByteArray();
        }

        /** What others hold counts: one body may be larger than all that may wait, and a small one beside it hinders it not. */
        private void hold(long bytes) {
            held += bytes;
            long all = waitingBytes.addAndGet(bytes);
            if (all - held >= limit()) {
                throw new ProblemException(busyReport(), RETRY_AFTER_S);
            }
        }

        void takePlace() {
            waiting.incrementAndGet();
            counted = true;
            try {
                working = places.tryAcquire(longestWait.toNanos(), TimeUnit.NANOSECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            leaveLine();
            if (!working) {
                throw new ProblemException(busyReport(), RETRY_AFTER_S);
            }
        }

        /** What is worked on waits no more. */
        private void leaveLine() {
            waitingBytes.addAndGet(-held);
            held = 0;
            if (counted) {
                counted = false;
                if (waiting.decrementAndGet() == 0) {
                    synchronized (waiting) {
                        waiting.notifyAll();
                    }
                }
            }
        }

        @Override
        public void close() {
            leaveLine();
            if (working) {
                places.release();
                noteFree();
            }
        }
    }
}
