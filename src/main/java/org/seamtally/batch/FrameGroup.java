package org.seamtally.batch;

import java.util.ArrayList;
import java.util.List;
import org.seamtally.wire.JobFrame;

/** Frames that are worked on together: as many as have room in some bytes, one at least. */
final class FrameGroup {

    /**
     * A frame's estimate takes about a millisecond. A hand-over costs some microseconds, and what is kept in a processor's
     * caches of the program's steps serves the whole group: more at once would gain nothing.
     */
    static final long MOST_BYTES = 64 * 1024;

    /** What a frame takes besides its request, and what its answer takes at least: small frames are bounded too. */
    private static final long FRAME_BYTES = 2 * 1024;

    private final List<JobFrame> frames = new ArrayList<>();
    private long bytes;

    /** What a frame counts for. */
    static long bytes(JobFrame frame) {
        return FRAME_BYTES + (frame.request() == null ? 0 : frame.request().length);
    }

    boolean hasRoomFor(JobFrame frame) {
        return frames.isEmpty() || bytes + bytes(frame) <= MOST_BYTES;
    }

    void add(JobFrame frame) {
        frames.add(frame);
        bytes += bytes(frame);
    }

    List<JobFrame> frames() {
        return frames;
    }

    /** What its frames count for together. */
    long bytes() {
        return bytes;
    }

    /** Frames in groups, in their order. */
    static List<List<JobFrame>> of(List<JobFrame> frames) {
        List<List<JobFrame>> groups = new ArrayList<>();
        FrameGroup group = new FrameGroup();
        for (JobFrame frame : frames) {
            if (!group.hasRoomFor(frame)) {
                groups.add(group.frames());
                group = new FrameGroup();
            }
            group.add(frame);
        }
        if (!group.frames().isEmpty()) {
            groups.add(group.frames());
        }
        return groups;
    }
}
