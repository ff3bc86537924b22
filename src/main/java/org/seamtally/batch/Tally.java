package org.seamtally.batch;

import java.io.IOException;
import org.seamtally.wire.JobLine;

/** Writes result lines and counts them. */
final class Tally {

    private final ResultSink sink;
    private final Progress progress;
    private Counts counts = Counts.NONE;

    Tally(ResultSink sink, Progress progress) {
        this.sink = sink;
        this.progress = progress;
    }

    void write(JobLine line) throws IOException {
        sink.line(line.json());
        counts = counts.plus(Counts.of(line));
        progress.at(counts);
    }

    Counts counts() {
        return counts;
    }
}
