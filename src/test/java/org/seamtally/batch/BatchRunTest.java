package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;
import org.seamtally.wire.JobTotals;

class BatchRunTest {

    private static final JobTotals TOTALS = JobTotals.none();

    /** Work that costs nothing: the frame's line number comes back. */
    private static final FrameWork ECHO = FrameWork.each(BatchRunTest::echoed);

    private static JobLine echoed(JobFrame frame) {
        return new JobLine(frame.line(), echo(frame.line()), () -> TOTALS);
    }

    private static byte[] echo(long line) {
        return ("{\"line\":" + line + "}").getBytes(StandardCharsets.UTF_8);
    }

    private static JobFrame frame(long line, int bytes) {
        return new JobFrame(line, new byte[bytes], null, null);
    }

    private static JobFrames numbered(long frames, int bytes) {
        AtomicLong next = new AtomicLong();
        return () -> next.get() == frames ? null : frame(next.incrementAndGet(), bytes);
    }

    @AfterEach
    void noThreadIsLeft() {
        List<String> left = Thread.getAllStackTraces().keySet().stream()
                .map(Thread::getName)
                .filter(name -> name.startsWith("batch-"))
                .toList();
        assertEquals(List.of(), left);
    }

    private static byte[] run(byte[] file, int workers, Form form) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ResultSink sink = form == Form.CSV ? new CsvResults(out, UnitSystem.SI) : new NdjsonResults(out);
        Counts counts = BatchRun.run(Jobs.open(file), Jobs.SI, workers, sink, Progress.UNWATCHED);
        assertEquals(counts.read(), counts.done() + counts.refused());
        return out.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void resultsAreTheSameBytesWhateverTheNumberOfWorkers(long seed) throws Exception {
        byte[] file = Jobs.ndjson(seed, 300);
        for (Form form : Form.values()) {
            byte[] one = run(file, 1, form);
            for (int workers : new int[] {2, 5}) {
                assertArrayEquals(one, run(file, workers, form), () -> "seed " + seed + ", " + workers + " workers");
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void aLineAFrameInTheirOrderAndTheTrailerLast(int workers) throws Exception {
        byte[] file = Jobs.ndjson(3, 150);
        List<JobFrame> frames = Jobs.frames(file);
        List<String> lines = new String(run(file, workers, Form.NDJSON), StandardCharsets.UTF_8)
                .lines()
                .toList();
        assertEquals(frames.size() + 1, lines.size());
        int refused = 0;
        for (int i = 0; i < frames.size(); i++) {
            assertTrue(lines.get(i).startsWith("{\"line\":" + frames.get(i).line() + ","), lines.get(i));
            refused += lines.get(i).contains("\"problem\":") ? 1 : 0;
        }
        assertTrue(refused > 0 && refused < frames.size());
        assertEquals(
                "{\"trailer\":{\"read\":150,\"done\":" + (150 - refused) + ",\"refused\":" + refused
                        + ",\"complete\":true}}",
                lines.get(150));
    }

    /** A client that sends a frame, reads its line, and only then sends the next. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void aLineIsSeenBeforeTheNextFrameIsSent(int workers) throws Exception {
        SynchronousQueue<Long> seen = new SynchronousQueue<>();
        AtomicLong sent = new AtomicLong();
        JobFrames polite = () -> {
            try {
                if (sent.get() > 0) {
                    assertEquals(sent.get(), seen.poll(60, TimeUnit.SECONDS));
                }
            } catch (InterruptedException e) {
                throw new IOException(e);
            }
            return sent.get() == 20 ? null : frame(sent.incrementAndGet(), 100);
        };
        CountDownLatch written = new CountDownLatch(20);
        OutputStream out = new ByteArrayOutputStream() {
            @Override
            public synchronized void write(byte[] bytes, int offset, int length) {
                super.write(bytes, offset, length);
                // one flushed line each time
                written.countDown();
            }
        };
        Thread client = new Thread(() -> {
            try {
                for (long line = 1; line <= 20; line++) {
                    long due = 20 - line;
                    while (written.getCount() > due) {
                        Thread.onSpinWait();
                    }
                    seen.put(line);
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        client.setDaemon(true);
        client.start();
        assertEquals(
                new Counts(20, 20, 0), BatchRun.run(polite, ECHO, workers, new NdjsonResults(out), Progress.UNWATCHED));
        client.join();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void aFaultOfTheProgramEndsTheRunWithoutATrailer(int workers) {
        for (Throwable fault : List.of(new IllegalStateException("a bug"), new StackOverflowError("an error"))) {
            FrameWork work = FrameWork.each(frame -> {
                if (frame.line() == 500) {
                    if (fault instanceof Error error) {
                        throw error;
                    }
                    throw (RuntimeException) fault;
                }
                return echoed(frame);
            });
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Throwable thrown = assertThrows(
                    fault.getClass(),
                    () -> BatchRun.run(
                            numbered(2000, 1000), work, workers, new NdjsonResults(out), Progress.UNWATCHED));
            assertSame(fault, thrown);
            assertFalse(out.toString(StandardCharsets.UTF_8).contains("trailer"));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void aSourceThatBreaksOffEndsTheRunWithoutATrailer(int workers) {
        IOException broken = new IOException("gone");
        JobFrames rest = numbered(100, 10);
        JobFrames frames = () -> {
            JobFrame next = rest.next();
            if (next == null) {
                throw broken;
            }
            return next;
        };
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertSame(
                broken,
                assertThrows(
                        IOException.class,
                        () -> BatchRun.run(frames, ECHO, workers, new NdjsonResults(out), Progress.UNWATCHED)));
        assertFalse(out.toString(StandardCharsets.UTF_8).contains("trailer"));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5})
    void resultsThatNobodyTakesEndTheRunSoon(int workers) {
        AtomicLong worked = new AtomicLong();
        FrameWork work = FrameWork.each(frame -> {
            worked.incrementAndGet();
            return echoed(frame);
        });
        IOException gone = new IOException("the client is gone");
        OutputStream out = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw gone;
            }
        };
        assertSame(
                gone,
                assertThrows(
                        IOException.class,
                        () -> BatchRun.run(
                                numbered(10_000_000, 1000),
                                work,
                                workers,
                                new NdjsonResults(out),
                                Progress.UNWATCHED)));
        assertTrue(worked.get() < 10_000, () -> worked + " frames were worked on for nobody");
    }

    @Test
    void aReaderThatWaitsForItsSourceIsInterrupted() {
        CountDownLatch never = new CountDownLatch(1);
        AtomicInteger read = new AtomicInteger();
        JobFrames frames = () -> {
            if (read.incrementAndGet() > 3) {
                try {
                    never.await();
                } catch (InterruptedException e) {
                    throw new java.io.InterruptedIOException();
                }
            }
            return frame(read.get(), 10);
        };
        OutputStream out = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("the client is gone");
            }
        };
        assertThrows(
                IOException.class, () -> BatchRun.run(frames, ECHO, 2, new NdjsonResults(out), Progress.UNWATCHED));
    }

    /** Frames are read no further ahead than the window, whatever the size of the file. */
    @ParameterizedTest
    @ValueSource(ints = {100, 5000, 1 << 20})
    void readingWaitsWhereWritingDoes(int bytes) throws Exception {
        int workers = 2;
        AtomicLong read = new AtomicLong();
        AtomicLong written = new AtomicLong();
        AtomicLong most = new AtomicLong();
        JobFrames rest = numbered(5000, bytes);
        JobFrames frames = () -> {
            most.accumulateAndGet(read.incrementAndGet() - written.get(), Math::max);
            return rest.next();
        };
        BatchRun.run(
                frames,
                ECHO,
                workers,
                new NdjsonResults(OutputStream.nullOutputStream()),
                counts -> written.set(counts.read()));
        // the window, a group that is being written, and the frame in the reader's hand
        long window = 2L * workers * 64 * 1024 / (bytes + 2048) + 64 * 1024 / (bytes + 2048) + 3;
        assertTrue(most.get() <= window, () -> most + " frames of " + bytes + " bytes between reading and writing");
    }

    @Test
    void progressIsToldAfterEveryLine() throws Exception {
        List<Counts> told = new ArrayList<>();
        FrameWork odd = FrameWork.each(
                frame -> frame.line() % 2 == 1 ? new JobLine(frame.line(), echo(frame.line()), null) : echoed(frame));
        BatchRun.run(numbered(4, 10), odd, 2, new NdjsonResults(OutputStream.nullOutputStream()), told::add);
        assertEquals(List.of(new Counts(1, 0, 1), new Counts(2, 1, 1), new Counts(3, 1, 2), new Counts(4, 2, 2)), told);
    }

    /** Where frames lie in a file, one worker takes as many together as have room in a group. */
    @Test
    void framesAtHandAreWorkedOnTogether() throws Exception {
        JobFrames frames = numbered(100, 14 * 1024).atHand();
        assertTrue(frames.ready());
        List<Integer> groups = new ArrayList<>();
        FrameWork work = group -> {
            groups.add(group.size());
            return group.stream().map(BatchRunTest::echoed).toList();
        };
        Counts counts =
                BatchRun.run(frames, work, 1, new NdjsonResults(OutputStream.nullOutputStream()), Progress.UNWATCHED);
        assertEquals(new Counts(100, 100, 0), counts);
        // 16 KiB each with what a frame takes besides, in 64
        assertEquals(Collections.nCopies(25, 4), groups);
    }

    @Test
    void aRunTakesAWorkerAtLeast() {
        assertThrows(
                IllegalArgumentException.class,
                () -> BatchRun.run(
                        numbered(1, 1),
                        ECHO,
                        0,
                        new NdjsonResults(OutputStream.nullOutputStream()),
                        Progress.UNWATCHED));
    }
}
