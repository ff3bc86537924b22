package org.seamtally.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.seamtally.batch.Form;

/**
 * A job file, and what holds for all its frames.
 *
 * @param file {@code -} for standard input
 * @param settings as JSON; null where there are none
 */
record JobSource(Path file, Form form, byte[] settings) {

    /** Whether it can be read but once: standard input, or a pipe that has a name. */
    boolean isStream() {
        return isStandardInput() || Files.exists(file) && !Files.isRegularFile(file);
    }

    /** Bytes of the file; 0 where nobody knows. */
    long size() throws IOException {
        return isStream() ? 0 : Files.size(file);
    }

    CountedInput open() throws IOException {
        return new CountedInput(isStandardInput() ? System.in : Files.newInputStream(file));
    }

    private boolean isStandardInput() {
        return file.toString().equals("-");
    }
}
