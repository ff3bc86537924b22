package org.seamtally.batch;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.function.Function;
import org.seamtally.wire.JobFrame;

/** Hands the result lines of a kept batch to a sink, chunk by chunk: one chunk's are held at a time. */
final class KeptResults {

    private final KeptBatches kept;
    private final KeptBatch batch;

    KeptResults(KeptBatches kept, KeptBatch batch) {
        this.kept = kept;
        this.batch = batch;
    }

    /** What is done with a chunk that has its results. */
    private interface Each {
        void chunk(int number, ChunkResult result) throws IOException;
    }

    /** The lines as they were kept. */
    void lines(ResultSink sink, Function<ChunkResult, byte[]> kind) throws IOException {
        upToTheGap(sink, (number, result) -> hand(kind.apply(result), sink));
    }

    /** The lines of the same frames worked on anew. */
    void anew(ResultSink sink, FrameWork work) throws IOException {
        upToTheGap(sink, (number, result) -> {
            Optional<Chunk> frames = kept.chunk(batch.plan().id(), number);
            if (frames.isEmpty()) {
                throw new IOException("the batch was removed while its results were read");
            }
            for (JobFrame frame : ChunkFrames.read(frames.get())) {
                sink.line(work.on(frame).json());
            }
        });
    }

    private void upToTheGap(ResultSink sink, Each each) throws IOException {
        Counts counts = Counts.NONE;
        int number = 0;
        for (; number < batch.sealed().chunks(); number++) {
            Optional<ChunkResult> result =
                    kept.result(batch.plan().shop(), batch.plan().id(), number);
            if (result.isEmpty()) {
                break;
            }
            each.chunk(number, result.get());
            counts = counts.plus(result.get().counts());
        }
        sink.end(counts, number == batch.sealed().chunks());
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
