package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** What must hold of a kept batch's results. */
final class Kept {

    private static final ObjectMapper JSON = new ObjectMapper();

    private Kept() {}

    /**
     * Each line once, in order, and the counts of the trailer.
     *
     * @throws AssertionError where anything is lost, doubled or miscounted
     */
    static void check(Path results, long frames) throws IOException {
        long done = 0;
        long refused = 0;
        long last = 0;
        JsonNode trailer = null;
        try (BufferedReader lines = Files.newBufferedReader(results)) {
            for (String text = lines.readLine(); text != null; text = lines.readLine()) {
                JsonNode line = JSON.readTree(text);
                if (trailer != null) {
                    throw new AssertionError("a line after the trailer: " + text);
                }
                if (line.has("trailer")) {
                    trailer = line.get("trailer");
                } else {
                    if (line.get("line").asLong() <= last) {
                        throw new AssertionError("out of order: line " + line.get("line") + " after " + last);
                    }
                    last = line.get("line").asLong();
                    done += line.has("estimate") ? 1 : 0;
                    refused += line.has("problem") ? 1 : 0;
                }
            }
        }
        if (trailer == null
                || done + refused != frames
                || trailer.get("read").asLong() != frames
                || trailer.get("done").asLong() != done
                || trailer.get("refused").asLong() != refused
                || !trailer.get("complete").asBoolean()) {
            throw new AssertionError(done + " done, " + refused + " refused of " + frames + ", trailer " + trailer);
        }
        System.out.println(results.getFileName() + ": " + done + " done, " + refused + " refused");
    }

    /** The same bytes. */
    static void same(Path expected, Path actual) throws IOException {
        long at = Files.mismatch(expected, actual);
        if (at >= 0) {
            throw new AssertionError(actual.getFileName() + " differs from the undisturbed run at byte " + at);
        }
    }
}
