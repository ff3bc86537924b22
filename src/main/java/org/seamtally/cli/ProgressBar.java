package org.seamtally.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Locale;
import java.util.function.LongSupplier;

/** A line on a terminal that is drawn over and over: how far a batch is, how fast it goes, how long it will take. */
final class ProgressBar implements BatchToFile.Look {

    // more would flicker, and nobody reads faster
    private static final Duration BETWEEN = Duration.ofMillis(200);
    // with what stands beside it within the 80 columns of the narrowest usual terminal
    private static final int CELLS = 24;

    private final PrintWriter err;
    private final InstantSource clock;
    private final long size;
    private final LongSupplier bytes;
    private final Instant start;
    private final long firstFrame;
    private final long firstByte;
    private Instant drawn = Instant.MIN;
    private int width;

    /**
     * @param size of the job file in bytes; 0 where nobody knows: then neither share nor time left is shown
     * @param bytes of it that are read so far
     * @param firstFrame frames that were there before, and count in no rate
     */
    ProgressBar(PrintWriter err, InstantSource clock, long size, LongSupplier bytes, long firstFrame) {
        this.err = err;
        this.clock = clock;
        this.size = size;
        this.bytes = bytes;
        this.firstFrame = firstFrame;
        this.start = clock.instant();
        this.firstByte = bytes.getAsLong();
    }

    @Override
    public void at(long frames) {
        Instant now = clock.instant();
        if (!drawn.equals(Instant.MIN) && Duration.between(drawn, now).compareTo(BETWEEN) < 0) {
            return;
        }
        drawn = now;
        over(line(frames, Duration.between(start, now)));
    }

    /** Takes the line away. */
    @Override
    public void ends() {
        over("");
        err.print('\r');
        err.flush();
    }

    private void over(String line) {
        err.print('\r' + line + " ".repeat(Math.max(0, width - line.length())));
        err.flush();
        width = line.length();
    }

    private String line(long frames, Duration gone) {
        long read = bytes.getAsLong();
        StringBuilder line = new StringBuilder();
        if (size > 0) {
            double share = Math.min(1, (double) read / size);
            int full = (int) (share * CELLS);
            line.append('[').append("#".repeat(full)).append(".".repeat(CELLS - full));
            line.append(String.format(Locale.ROOT, "] %3d %%  ", (int) (share * 100)));
        }
        line.append(frames).append(" frames");
        double seconds = gone.toMillis() / 1000.0;
        if (seconds > 0 && frames > firstFrame) {
            line.append(String.format(Locale.ROOT, "  %.0f/s", (frames - firstFrame) / seconds));
        }
        if (seconds > 0 && read > firstByte && size > read) {
            line.append("  ")
                    .append(hours(Math.round(seconds * (size - read) / (read - firstByte))))
                    .append(" left");
        }
        return line.toString();
    }

    private static String hours(long seconds) {
        return seconds < 3600
                ? String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60)
                : String.format(Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }
}
