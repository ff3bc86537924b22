package org.seamtally.load;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Asks a running Java process for what lives in its heap after a collection. */
final class LiveHeap {

    // the last line of the histogram of live objects: Total, objects, bytes
    private static final Pattern TOTAL = Pattern.compile("Total +\\d+ +(\\d+)");

    private static final int COUNTS = 8;

    private LiveHeap() {}

    /**
     * Bytes of the objects that a full collection left: the least of several counts, each where the process stood still. A
     * count does not collect first while a native call holds an array (packing a chunk does), and shows garbage then.
     */
    static long of(long process) throws IOException, InterruptedException {
        long least = Long.MAX_VALUE;
        for (int i = 0; i < COUNTS; i++) {
            try {
                least = Math.min(least, count(process));
            } catch (IOException e) {
                // it may have come to its end since the first count
                if (i == 0) {
                    throw e;
                }
                break;
            }
        }
        return least;
    }

    private static long count(long process) throws IOException, InterruptedException {
        Path jcmd = Path.of(System.getProperty("java.home"), "bin", "jcmd");
        // counting the objects collects first
        Process asked = new ProcessBuilder(jcmd.toString(), Long.toString(process), "GC.class_histogram")
                .redirectErrorStream(true)
                .start();
        String answer = new String(asked.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        Matcher total = TOTAL.matcher(answer);
        if (asked.waitFor() != 0 || !total.find()) {
            throw new IOException("no histogram of process " + process + ": " + answer);
        }
        return Long.parseLong(total.group(1));
    }
}
