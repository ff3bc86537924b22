package org.seamtally.load;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Counts the lines of a file that is being written. */
final class ResultLines implements AutoCloseable {

    private final InputStream in;
    private final byte[] piece = new byte[1 << 16];
    private long lines;

    ResultLines(Path file) throws IOException {
        in = Files.newInputStream(file);
    }

    /** Line ends that are written so far. */
    long soFar() throws IOException {
        for (int read = in.read(piece); read > 0; read = in.read(piece)) {
            for (int i = 0; i < read; i++) {
                lines += piece[i] == '\n' ? 1 : 0;
            }
        }
        return lines;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }
}
