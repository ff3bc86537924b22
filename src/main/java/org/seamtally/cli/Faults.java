package org.seamtally.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;

/** Faults of files in words: of some the message is but a name. */
final class Faults {

    private Faults() {}

    static String words(IOException e) {
        if (e instanceof NoSuchFileException missing) {
            return missing.getFile() + ": no such file or directory";
        }
        if (e instanceof AccessDeniedException denied) {
            return denied.getFile() + ": access denied";
        }
        return e.getMessage() == null ? e.toString() : e.getMessage();
    }
}
