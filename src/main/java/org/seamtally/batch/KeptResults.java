package org.seamtally.batch;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;

/** Hands the result lines of a kept batch to a sink, chunk by chunk: one chunk's are held at a time. */
final class KeptResults {

    private final KeptBatches kept;
    private final KeptBatch batch;

    KeptResults(KeptBatches kept, KeptBatch batch) {
        this.kept = kept;
        this.batch = batch;
    }

    /** Hands what there is of a chunk to a sink; its counts, empty where it has no results yet. */
    private interface Each {
        Optional<Counts> chunk(int number) throws IOException;
    }

    /** The lines as they were kept. */
    void lines(ResultSink sink) throws IOException {
        upToTheGap(sink, number -> handed(kept.lines(shop(), id(), number), sink));
    }

    /** The lines of those that were refused. */
    void refusals(ResultSink sink) throws IOException {
        upToTheGap(sink, number -> handed(kept.refusals(shop(), id(), number), sink));
    }

    /** The lines of the same frames worked on anew. */
    void anew(ResultSink sink, FrameWork work) throws IOException {
        upToTheGap(sink, number -> {
            Optional<Counts> counts = kept.counts(shop(), id(), number);
            if (counts.isPresent()) {
                for (List<JobFrame> group : FrameGroup.of(ChunkFrames.read(frames(number)))) {
                    for (JobLine line : work.on(group)) {
                        sink.line(line.json());
                    }
                }
            }
            return counts;
        });
    }

    private Chunk frames(int number) throws IOException {
        return kept.chunk(id(), number)
                .orElseThrow(() -> new IOException("the batch was removed while its results were read"));
    }

    private String shop() {
        return batch.plan().shop();
    }

    private UUID id() {
        return batch.plan().id();
    }

    private void upToTheGap(ResultSink sink, Each each) throws IOException {
        Counts counts = Counts.NONE;
        int number = 0;
        for (; number < batch.sealed().chunks(); number++) {
            Optional<Counts> chunk = each.chunk(number);
            if (chunk.isEmpty()) {
                break;
            }
            counts = counts.plus(chunk.get());
        }
        sink.end(counts, number == batch.sealed().chunks());
    }

    private static Optional<Counts> handed(Optional<KeptBatches.ChunkLines> found, ResultSink sink) throws IOException {
        if (found.isPresent()) {
            hand(found.get().lines(), sink);
        }
        return found.map(KeptBatches.ChunkLines::counts);
    }

    private static void hand(byte[] compressed, ResultSink sink) throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        byte[] some = new byte[NdjsonResults.BUFFER];
        try (InputStream lines = ChunkWork.lines(compressed)) {
            for (int got = lines.read(some); got >= 0; got = lines.read(some)) {
                int from = 0;
                for (int at = 0; at < got; at++) {
                    if (some[at] == '\n') {
                        line.write(some, from, at - from);
                        sink.line(line.toByteArray());
                        line.reset();
                        from = at + 1;
                    }
                }
                line.write(some, from, got - from);
            }
        }
    }
}
