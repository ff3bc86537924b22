package org.seamtally.batch;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;
import org.seamtally.wire.JobTotals;

/** Works on a chunk's frames one after the other, and puts together what is kept of them. */
final class ChunkWork {

    private final ByteArrayOutputStream lines = new ByteArrayOutputStream();
    private final ByteArrayOutputStream refusals = new ByteArrayOutputStream();
    private Counts counts = Counts.NONE;
    private JobTotals totals = JobTotals.none();

    private ChunkWork() {}

    /** What comes of a chunk. */
    static ChunkResult on(Chunk chunk, FrameWork work) {
        ChunkWork all = new ChunkWork();
        try (OutputStreamPair out =
                new OutputStreamPair(new DeflaterOutputStream(all.lines), new DeflaterOutputStream(all.refusals))) {
            for (List<JobFrame> group : FrameGroup.of(ChunkFrames.read(chunk))) {
                for (JobLine line : work.on(group)) {
                    all.add(line, out);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("memory can always be written to", e);
        }
        return new ChunkResult(all.counts, all.lines.toByteArray(), all.refusals.toByteArray(), all.totals.json());
    }

    private void add(JobLine line, OutputStreamPair out) throws IOException {
        out.lines.write(line.json());
        out.lines.write('\n');
        if (line.refused()) {
            out.refusals.write(line.json());
            out.refusals.write('\n');
        } else {
            totals = totals.plus(line.totals().get());
        }
        counts = counts.plus(Counts.of(line));
    }

    private record OutputStreamPair(DeflaterOutputStream lines, DeflaterOutputStream refusals)
            implements AutoCloseable {
        @Override
        public void close() throws IOException {
            lines.close();
            refusals.close();
        }
    }

    /** Lines that were kept, as they were written. */
    static InputStream lines(byte[] kept) {
        return new InflaterInputStream(new ByteArrayInputStream(kept));
    }
}
