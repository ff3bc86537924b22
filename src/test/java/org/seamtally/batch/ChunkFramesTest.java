package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.Violation;

class ChunkFramesTest {

    private static final ProblemReport PROBLEM = new ProblemReport(
            "/problems/invalid",
            "Träger",
            422,
            null,
            List.of(
                    new Violation("frame", "empty", "words", null, null),
                    new Violation("line 2, kind", "unknown-word", "words", "\"\uD83D\uDE80\"", List.of("a", "b")),
                    new Violation("", "missing", "x".repeat(70_000), "", List.of())));

    private static void assertSame(List<JobFrame> expected, List<JobFrame> got) {
        assertEquals(expected.size(), got.size());
        for (int i = 0; i < expected.size(); i++) {
            assertEquals(expected.get(i).line(), got.get(i).line());
            assertArrayEquals(expected.get(i).request(), got.get(i).request());
            assertEquals(expected.get(i).places(), got.get(i).places());
            assertEquals(expected.get(i).problem(), got.get(i).problem());
        }
    }

    @Test
    void nothingOfAFrameIsLost() {
        List<JobFrame> frames = List.of(
                new JobFrame(1, "{}".getBytes(StandardCharsets.UTF_8), null, null),
                new JobFrame(
                        Long.MAX_VALUE,
                        new byte[] {0, -1, 13, 10},
                        new JobFrame.Places(List.of(7L, 8L, 1L << 40), List.of("frame", "länge [in]", "")),
                        null),
                new JobFrame(3, new byte[0], new JobFrame.Places(List.of(), List.of()), null),
                new JobFrame(4, null, null, PROBLEM),
                new JobFrame(5, null, null, ProblemReport.of(413, "too-long", "A line is too long.", "detail")));
        Chunk chunk = ChunkFrames.written(frames);
        assertEquals(frames.size(), chunk.frames());
        assertSame(frames, ChunkFrames.read(chunk));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aFileComesBackAsItWasRead(long seed) throws Exception {
        List<JobFrame> frames = Jobs.frames(Jobs.ndjson(seed, 200));
        assertTrue(frames.stream().anyMatch(frame -> frame.request() != null), () -> "seed " + seed);
        assertSame(frames, ChunkFrames.read(ChunkFrames.written(frames)));
    }

    @Test
    void whatIsDamagedOrOfAnotherVersionIsNotTaken() throws Exception {
        Chunk chunk = ChunkFrames.written(Jobs.frames(Jobs.ndjson(4, 20)));
        byte[] bytes = chunk.bytes();
        for (int length : new int[] {0, 1, 2, bytes.length / 2, bytes.length - 5}) {
            Chunk cut = new Chunk(20, Arrays.copyOf(bytes, length));
            assertThrows(IllegalStateException.class, () -> ChunkFrames.read(cut), () -> "cut to " + length);
        }
        byte[] other = bytes.clone();
        other[0]++;
        assertThrows(IllegalStateException.class, () -> ChunkFrames.read(new Chunk(20, other)));
    }

    /** Whole and undamaged as a file, and yet with something behind its frames, whatever byte it is. */
    @ParameterizedTest
    @ValueSource(bytes = {0, 1, -1})
    void whatHoldsMoreThanItsFramesIsNotTaken(byte more) throws Exception {
        byte[] bytes = ChunkFrames.written(Jobs.frames(Jobs.ndjson(5, 3))).bytes();
        byte[] frames = new InflaterInputStream(new ByteArrayInputStream(bytes, 1, bytes.length - 1)).readAllBytes();
        ByteArrayOutputStream longer = new ByteArrayOutputStream();
        longer.write(bytes[0]);
        try (DeflaterOutputStream out = new DeflaterOutputStream(longer)) {
            out.write(frames);
            out.write(more);
        }
        assertThrows(IllegalStateException.class, () -> ChunkFrames.read(new Chunk(3, longer.toByteArray())));
    }
}
