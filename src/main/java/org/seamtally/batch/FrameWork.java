package org.seamtally.batch;

import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;

/** What is done with a frame: the engine in the units asked for. Safe to call from many threads. */
@FunctionalInterface
public interface FrameWork {

    /** The frame's estimate, or its problem. */
    JobLine on(JobFrame frame);
}
