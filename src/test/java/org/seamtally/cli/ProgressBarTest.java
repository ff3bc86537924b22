package org.seamtally.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class ProgressBarTest {

    private final StringWriter seen = new StringWriter();
    private Instant now = Instant.parse("2026-01-01T00:00:00Z");
    private long bytes;

    private ProgressBar bar(long size, long before) {
        return new ProgressBar(new PrintWriter(seen), () -> now, size, () -> bytes, before);
    }

    private String last() {
        return seen.toString().substring(seen.toString().lastIndexOf('\r') + 1);
    }

    @Test
    void framesRateAndTimeLeftByTheBytesRead() {
        ProgressBar bar = bar(1000, 0);
        now = now.plusSeconds(10);
        bytes = 250;
        bar.at(5000);
        assertEquals("[######..................]  25 %  5000 frames  500/s  0:30 left", last());
        now = now.plusSeconds(7200);
        bytes = 500;
        bar.at(6000);
        assertTrue(last().endsWith("  2:00:10 left"), last());
    }

    /** What was there before, and was only read over, makes no rate. */
    @Test
    void anEarlierRunsFramesCountInNoRate() {
        bytes = 500;
        ProgressBar bar = bar(1000, 8000);
        now = now.plusSeconds(10);
        bytes = 600;
        bar.at(8100);
        assertTrue(last().endsWith(" 8100 frames  10/s  0:40 left"), last());
    }

    @Test
    void drawnFiveTimesASecondAtMostAndNeverWiderThanATerminal() {
        ProgressBar bar = bar(1_000_000_000_000L, 0);
        for (int i = 1; i <= 1000; i++) {
            now = now.plusMillis(10);
            bytes += 1_000_000;
            bar.at(100_000L * i);
        }
        String[] drawn = seen.toString().split("\r");
        assertTrue(drawn.length >= 45 && drawn.length <= 51, drawn.length + " in ten seconds");
        for (String line : drawn) {
            assertTrue(line.length() < 80, line);
        }
    }

    @Test
    void nothingOfItStays() {
        ProgressBar bar = bar(1000, 0);
        now = now.plusSeconds(10);
        bytes = 250;
        bar.at(5000);
        int width = last().length();
        bar.ends();
        assertTrue(seen.toString().endsWith("\r" + " ".repeat(width) + "\r"), "blanks over all of it");
    }

    @Test
    void ofAStreamNobodyKnowsTheEnd() {
        ProgressBar bar = bar(0, 0);
        now = now.plusSeconds(2);
        bytes = 250;
        bar.at(10);
        assertEquals("10 frames  5/s", last());
    }
}
