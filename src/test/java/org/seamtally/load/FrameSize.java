package org.seamtally.load;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;

/**
 * Whether a joint of a frame of 10 000 takes more than one of a frame of 1000, all of them different: processor time from
 * the text of the request to that of the answer, the two sizes in turns. Run by {@code load-tests/frame-size}.
 */
public final class FrameSize {

    private static final int SMALL = 1_000;
    private static final int LARGE = 10_000;
    private static final int TIMES = 7;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final Engine engine = new Engine("0");
    private final LoadBodies bodies = new LoadBodies(7, false);
    private long written;

    private FrameSize() {}

    /** @param args none */
    public static void main(String[] args) throws IOException {
        FrameSize measure = new FrameSize();
        // what is compiled is compiled before anything counts
        for (int i = 0; i < 20; i++) {
            measure.perJoint(SMALL, 1);
        }
        double[] small = new double[TIMES];
        double[] large = new double[TIMES];
        for (int i = 0; i < TIMES; i++) {
            small[i] = measure.perJoint(SMALL, LARGE / SMALL);
            large[i] = measure.perJoint(LARGE, 1);
        }
        System.out.printf(
                Locale.ROOT,
                "microseconds of CPU a joint: %.1f of %d, %.1f of %d, medians of %d; %d MB written%n",
                Median.of(small),
                SMALL,
                Median.of(large),
                LARGE,
                TIMES,
                measure.written >> 20);
        System.out.printf(
                Locale.ROOT,
                "CPU a joint, of 10000 in a frame to 1000: %.2f (at most 1.10)%n",
                Median.of(large) / Median.of(small));
    }

    private double perJoint(int joints, int frames) throws IOException {
        byte[][] texts = new byte[frames][];
        for (int i = 0; i < frames; i++) {
            texts[i] = bodies.frame(joints).getBytes(StandardCharsets.UTF_8);
        }
        long start = THREADS.getCurrentThreadCpuTime();
        for (byte[] text : texts) {
            Outcome<?> outcome = engine.frameEstimate(new ByteArrayInputStream(text), UnitSystem.SI);
            if (!(outcome instanceof Outcome.Answered<?> answered)) {
                throw new IllegalStateException(outcome.toString());
            }
            written += Json.mapper().writeValueAsBytes(answered.answer()).length;
        }
        return (THREADS.getCurrentThreadCpuTime() - start) / 1e3 / joints / frames;
    }
}
