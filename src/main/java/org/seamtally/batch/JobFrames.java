package org.seamtally.batch;

import java.io.IOException;
import org.seamtally.wire.JobFrame;

/** The frames of a job file, one after the other: no more than one is held at a time. */
public interface JobFrames {

    /**
     * The next frame, or what was wrong with reading it; null after the last.
     *
     * @throws IOException where the file could not be fetched any further
     */
    JobFrame next() throws IOException;

    /** Whether the next frame is at hand, without waiting for whoever sends the file; false where that is not known. */
    default boolean ready() throws IOException {
        return false;
    }

    /** The same frames where they lie in a file: each of them is at hand. */
    default JobFrames atHand() {
        JobFrames these = this;
        return new JobFrames() {
            @Override
            public JobFrame next() throws IOException {
                return these.next();
            }

            @Override
            public boolean ready() {
                return true;
            }
        };
    }
}
