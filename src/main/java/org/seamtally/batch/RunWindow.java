package org.seamtally.batch;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;

/**
 * The frames of a run that are between reading and writing. It is bounded by the bytes of their requests, whatever the size
 * of the file. Frames are handed over in groups: a group grows while nobody takes it, so that workers that are busy take
 * many at once, and one that is idle takes a frame as soon as it is read.
 */
final class RunWindow {

    /** Groups for each worker: one to work on, one to go on with. */
    private static final long GROUPS_A_WORKER = 2;

    private final long most;
    private final Deque<Group> unwritten = new ArrayDeque<>();
    private final Deque<Group> untaken = new ArrayDeque<>();
    private long bytes;
    private boolean ended;
    private boolean stopped;
    private Throwable fault;

    RunWindow(int workers) {
        most = workers * GROUPS_A_WORKER * FrameGroup.MOST_BYTES;
    }

    /** Frames that are worked on together. Changed under the window's lock, and by nobody once it is taken. */
    static final class Group {
        private final FrameGroup group = new FrameGroup();
        private List<JobLine> lines;

        List<JobFrame> frames() {
            return group.frames();
        }
    }

    /** Adds a frame, once there is room; one that is larger than the window has it for itself. False where the run stopped. */
    synchronized boolean put(JobFrame frame) throws InterruptedException {
        long size = FrameGroup.bytes(frame);
        while (!stopped && bytes > 0 && bytes + size > most) {
            wait();
        }
        if (stopped) {
            return false;
        }
        Group group = untaken.peekLast();
        if (group == null || !group.group.hasRoomFor(frame)) {
            group = new Group();
            untaken.add(group);
            unwritten.add(group);
        }
        group.group.add(frame);
        bytes += size;
        notifyAll();
        return true;
    }

    /** Every frame has been read. */
    synchronized void ended() {
        ended = true;
        notifyAll();
    }

    /** The next group to work on; null where there will be none. */
    synchronized Group take() throws InterruptedException {
        while (!stopped && untaken.isEmpty() && !ended) {
            wait();
        }
        return stopped ? null : untaken.poll();
    }

    /** What came of a group. */
    synchronized void done(Group group, List<JobLine> lines) {
        group.group.frames().clear();
        group.lines = lines;
        notifyAll();
    }

    /** Whether {@link #nextDone} would not wait. */
    synchronized boolean isNextDone() {
        return isDecided();
    }

    private boolean isDecided() {
        return fault != null || (unwritten.isEmpty() ? ended : unwritten.peek().lines != null);
    }

    /**
     * Lines of the first group that is not written; null after the last.
     *
     * @throws IOException where reading failed
     */
    synchronized List<JobLine> nextDone() throws IOException {
        try {
            while (!isDecided()) {
                wait();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("the run was interrupted");
        }
        if (fault != null) {
            throw failed();
        }
        Group group = unwritten.poll();
        if (group == null) {
            return null;
        }
        bytes -= group.group.bytes();
        notifyAll();
        return group.lines;
    }

    private IOException failed() {
        if (fault instanceof IOException reading) {
            return reading;
        }
        if (fault instanceof Error error) {
            throw error;
        }
        throw fault instanceof RuntimeException unchecked ? unchecked : new IllegalStateException(fault);
    }

    /** Something went wrong that is no frame's fault: the run ends. The first counts. */
    synchronized void fail(Throwable why) {
        if (fault == null && !stopped) {
            fault = why;
        }
        stop();
    }

    /** Nobody goes on. */
    synchronized void stop() {
        stopped = true;
        notifyAll();
    }

    synchronized boolean isStopped() {
        return stopped;
    }
}
