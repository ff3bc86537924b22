package org.seamtally.batch;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.seamtally.wire.JobFrame;

/** Cuts a job file into chunks and keeps them; holds one chunk at a time. */
final class Upload {

    private final KeptBatches kept;
    private final BatchPlan plan;
    private final ChunkSize size;
    private final List<JobFrame> open = new ArrayList<>();
    private long openBytes;
    private int chunks;
    private long frames;

    Upload(KeptBatches kept, BatchPlan plan, ChunkSize size) {
        this.kept = kept;
        this.plan = plan;
        this.size = size;
    }

    /** Keeps all frames of a file. */
    void keep(JobFrames file) throws IOException {
        for (JobFrame frame = file.next(); frame != null; frame = file.next()) {
            open.add(frame);
            openBytes += frame.request() == null ? 0 : frame.request().length;
            frames++;
            if (open.size() >= size.frames() || openBytes >= size.bytes()) {
                close();
            }
        }
        if (!open.isEmpty()) {
            close();
        }
    }

    private void close() {
        kept.add(plan.shop(), plan.id(), chunks, ChunkFrames.written(open));
        chunks++;
        open.clear();
        openBytes = 0;
    }

    int chunks() {
        return chunks;
    }

    long frames() {
        return frames;
    }
}
