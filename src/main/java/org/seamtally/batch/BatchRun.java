package org.seamtally.batch;

import java.io.IOException;
import java.util.List;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;

/**
 * The loop over a job file: read a frame, work on it, write its line. Results stand in the order of the frames, and are the
 * same bytes whatever the number of workers. A frame's fault is its own and becomes its line; what is nobody's line ends the
 * run: a source that breaks off, results that nobody takes, a fault of the program. Then there is no trailer.
 */
public final class BatchRun {

    private BatchRun() {}

    /**
     * Runs to the end of the file, and writes the trailer.
     *
     * @param workers 1: all in the caller's thread. More: as many threads that work and one that reads, while the caller's
     *     writes; all have ended when this returns or throws, but for a read that cannot be interrupted: its thread ends with
     *     the source, and does not keep the program alive
     * @throws IOException where the file could not be fetched, or the results not be handed on
     */
    public static Counts run(JobFrames frames, FrameWork work, int workers, ResultSink sink, Progress progress)
            throws IOException {
        if (workers < 1) {
            throw new IllegalArgumentException("a run takes one worker at least, not " + workers);
        }
        Tally tally = new Tally(sink, progress);
        if (workers == 1) {
            alone(frames, work, sink, tally);
        } else {
            shared(frames, work, workers, sink, tally);
        }
        sink.end(tally.counts(), true);
        return tally.counts();
    }

    private static void alone(JobFrames frames, FrameWork work, ResultSink sink, Tally tally) throws IOException {
        JobFrame frame = frames.next();
        while (frame != null) {
            FrameGroup group = new FrameGroup();
            boolean atHand;
            do {
                group.add(frame);
                // whoever waits for a line does not wait for more to be sent
                atHand = frames.ready();
                frame = atHand ? frames.next() : null;
            } while (frame != null && group.hasRoomFor(frame));
            for (JobLine line : work.on(group.frames())) {
                tally.write(line);
            }
            if (!atHand) {
                sink.flush();
                frame = frames.next();
            }
        }
    }

    private static void shared(JobFrames frames, FrameWork work, int workers, ResultSink sink, Tally tally)
            throws IOException {
        RunWindow window = new RunWindow(workers);
        try (RunThreads threads = RunThreads.start(frames, work, workers, window)) {
            while (true) {
                if (!window.isNextDone()) {
                    sink.flush();
                }
                List<JobLine> lines = window.nextDone();
                if (lines == null) {
                    return;
                }
                for (JobLine line : lines) {
                    tally.write(line);
                }
            }
        }
    }
}
