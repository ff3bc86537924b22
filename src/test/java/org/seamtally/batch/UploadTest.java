package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.wire.JobFrame;

class UploadTest {

    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final UUID ID = new UUID(1, 2);

    /** Frames of each chunk that a file of equal frames is kept in. */
    private static List<Integer> kept(int frames, int bytes, ChunkSize size) throws Exception {
        MemoryStore store = new MemoryStore(new SettableClock(START));
        BatchPlan plan = new BatchPlan(ID, "shop", "engine", "si", Form.NDJSON, START, Optional.empty());
        store.begin(plan);
        AtomicLong next = new AtomicLong();
        Upload upload = new Upload(store, plan, size);
        upload.keep(
                () -> next.get() == frames ? null : new JobFrame(next.incrementAndGet(), new byte[bytes], null, null));
        assertEquals(frames, upload.frames());
        store.seal("shop", ID, new KeptBatches.Sealed(upload.chunks(), frames, "digest", START), null);
        List<Integer> chunks = new ArrayList<>();
        for (int i = 0; i < upload.chunks(); i++) {
            chunks.add(ChunkFrames.read(store.chunk(ID, i).orElseThrow()).size());
        }
        return chunks;
    }

    @ParameterizedTest
    @CsvSource({"10, 5, 0", "11, 5, 1", "14, 5, 4", "5, 5, 0", "4, 5, 4"})
    void aChunkIsClosedAtItsFrames(int frames, int most, int rest) throws Exception {
        List<Integer> due = new ArrayList<>(Collections.nCopies(frames / most, most));
        if (rest > 0) {
            due.add(rest);
        }
        assertEquals(due, kept(frames, 10, new ChunkSize(most, 1_000_000)));
    }

    @ParameterizedTest
    @CsvSource({"299, 3", "300, 3", "301, 4", "1, 1"})
    void orAtTheFirstFrameThatReachesItsBytes(int most, int frames) throws Exception {
        assertEquals(Collections.nCopies(5, frames), kept(5 * frames, 100, new ChunkSize(1000, most)));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, -1})
    void aChunkHasAFrameAndAByteAtLeast(int none) {
        assertThrows(IllegalArgumentException.class, () -> new ChunkSize(none, 1));
        assertThrows(IllegalArgumentException.class, () -> new ChunkSize(1, none));
    }

    @Test
    void oneOfEachIsEnough() throws Exception {
        assertEquals(List.of(1, 1, 1), kept(3, 1, new ChunkSize(1, 1)));
    }
}
