package org.seamtally.batch;

import java.io.IOException;

/** Where result lines go, in the order of the frames. Called by one thread. */
public interface ResultSink {

    /** The next result line: {@code {"line": n, …}} as JSON in UTF-8, no line end. */
    void line(byte[] json) throws IOException;

    /** Nothing follows at once: what was written is to be seen now. */
    void flush() throws IOException;

    /**
     * The trailer, after everything went well: a stream without it was cut.
     *
     * @param complete whether the lines are all that there will ever be
     */
    void end(Counts counts, boolean complete) throws IOException;
}
