package org.seamtally.batch;

import java.util.ArrayList;
import java.util.List;
import org.seamtally.wire.JobFrame;

/** The threads of a run: one reads, the others work. Closing ends them all. */
final class RunThreads implements AutoCloseable {

    /** What a reader is given to notice that it is to end; one that waits for its source cannot, and is left to it. */
    private static final long READER_GRACE_MILLIS = 1000;

    private final RunWindow window;
    private final Thread reader;
    private final List<Thread> workers = new ArrayList<>();

    private RunThreads(JobFrames frames, FrameWork work, int count, RunWindow window) {
        this.window = window;
        this.reader = thread("batch-reader", () -> read(frames));
        for (int i = 1; i <= count; i++) {
            workers.add(thread("batch-worker-" + i, () -> work(work)));
        }
    }

    static RunThreads start(JobFrames frames, FrameWork work, int count, RunWindow window) {
        RunThreads threads = new RunThreads(frames, work, count, window);
        threads.reader.start();
        threads.workers.forEach(Thread::start);
        return threads;
    }

    private Thread thread(String name, Job job) {
        Thread thread = new Thread(
                () -> {
                    try {
                        job.run();
                    } catch (Throwable fault) {
                        // not lost: the thread that writes throws it
                        window.fail(fault);
                    }
                },
                name);
        thread.setDaemon(true);
        return thread;
    }

    private interface Job {
        void run() throws Exception;
    }

    private void read(JobFrames frames) throws Exception {
        for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
            if (!window.put(frame)) {
                return;
            }
        }
        window.ended();
    }

    private void work(FrameWork work) throws InterruptedException {
        for (RunWindow.Group group = window.take(); group != null; group = window.take()) {
            window.done(group, work.on(group.frames()));
        }
    }

    @Override
    public void close() {
        window.stop();
        reader.interrupt();
        boolean interrupted = false;
        for (Thread worker : workers) {
            interrupted |= join(worker, 0);
        }
        interrupted |= join(reader, READER_GRACE_MILLIS);
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Waits for a thread's end; whether the waiting thread was interrupted meanwhile. */
    private static boolean join(Thread thread, long millis) {
        boolean interrupted = false;
        while (true) {
            try {
                thread.join(millis);
                return interrupted;
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
    }
}
