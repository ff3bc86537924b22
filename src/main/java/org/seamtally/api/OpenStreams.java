package org.seamtally.api;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.concurrent.Semaphore;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.wire.ProblemReport;

/**
 * Bodies and answers of any length that are under way. Each holds a thread for as long as the other side takes, so that
 * there may be so many and no more: the rest of the threads stays free for estimates.
 */
@ApplicationScoped
public class OpenStreams {

    private final Semaphore free;

    OpenStreams(@ConfigProperty(name = "seamtally.streams.most") int most) {
        free = new Semaphore(most);
    }

    /**
     * Lets one more begin; whoever began it closes it.
     *
     * @throws ProblemException 503 where as many are under way as may be
     */
    Place begin() {
        if (!free.tryAcquire()) {
            throw new ProblemException(ProblemReport.of(
                    503, "busy", "Too many streams are under way.", "Ask again when one of them has ended."));
        }
        return new Place(free);
    }

    /** Streams that may begin now. */
    int free() {
        return free.availablePermits();
    }

    /** A stream that is under way. */
    static final class Place implements AutoCloseable {

        private final Semaphore of;
        private boolean open = true;

        private Place(Semaphore of) {
            this.of = of;
        }

        /** Ends it; a second time does nothing. */
        @Override
        public synchronized void close() {
            if (open) {
                open = false;
                of.release();
            }
        }
    }
}
