package org.seamtally.batch;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Results as a JSON object a line, the last one the trailer. */
public final class NdjsonResults implements ResultSink {

    private final OutputStream out;

    /** @param out is flushed, and not closed */
    public NdjsonResults(OutputStream out) {
        this.out = new BufferedOutputStream(out, BUFFER);
    }

    /** Bytes that are gathered before they are handed on: several short lines at once, and long lines pass as they are. */
    static final int BUFFER = 16 * 1024;

    @Override
    public void line(byte[] json) throws IOException {
        out.write(json);
        out.write('\n');
    }

    @Override
    public void flush() throws IOException {
        out.flush();
    }

    @Override
    public void end(Counts counts, boolean complete) throws IOException {
        String trailer = "{\"trailer\":{\"read\":" + counts.read() + ",\"done\":" + counts.done() + ",\"refused\":"
                + counts.refused() + ",\"complete\":" + complete + "}}";
        line(trailer.getBytes(StandardCharsets.UTF_8));
        flush();
    }
}
