package org.seamtally.batch;

import java.io.IOException;
import java.io.OutputStream;

/** Result lines of a kept batch that is there: nothing is written before somebody takes them. */
@FunctionalInterface
public interface KeptLines {

    /** Writes the lines of all chunks up to the first that is not done, and the trailer. The stream is not closed. */
    void writeTo(OutputStream out) throws IOException;
}
