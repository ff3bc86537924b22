package org.seamtally.kept;

import java.io.IOException;
import java.io.OutputStream;

/** A copy of all that is kept, as it was at one moment, taken while it is in use. */
public interface KeptCopy {

    /** Whether it can be taken: a database server is copied by its own tools. */
    boolean isTaken();

    /**
     * Writes it, while it is made.
     *
     * @throws UnavailableException where what is kept cannot be reached
     * @throws IOException where it cannot be written; it is no copy then
     */
    void writeTo(OutputStream out) throws IOException;
}
