package org.seamtally.batch;

import java.util.List;
import java.util.function.Function;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;

/** What is done with frames that are at hand together: the engine in the units asked for. Safe to call from many threads. */
@FunctionalInterface
public interface FrameWork {

    /** Each frame's estimate, or its problem, in their order. */
    List<JobLine> on(List<JobFrame> frames);

    /** Work that takes one frame after the other. */
    static FrameWork each(Function<JobFrame, JobLine> work) {
        return frames -> frames.stream().map(work).toList();
    }
}
