package org.seamtally.cli;

import java.io.IOException;
import org.seamtally.batch.Counts;
import org.seamtally.batch.ResultSink;

/** Results in a file, added to those of an earlier run: the last line counts both. */
record MoreResults(ResultSink sink, Counts before) implements ResultSink {

    @Override
    public void line(byte[] json) throws IOException {
        sink.line(json);
    }

    /** Nobody waits for a file's lines: they go to the disk when there are enough of them. */
    @Override
    public void flush() {}

    @Override
    public void end(Counts counts, boolean complete) throws IOException {
        sink.end(counts.plus(before), complete);
    }
}
