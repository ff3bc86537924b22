package org.seamtally.batch;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.function.Consumer;
import org.seamtally.kept.UnavailableException;

/** Says again and again that an upload goes on: with its reads, but no oftener than is needed. */
final class Pulse implements Runnable {

    private final InstantSource clock;
    private final Duration every;
    private final Consumer<Instant> saying;
    private Instant last;

    /**
     * A pulse that begins now.
     *
     * @param every time between two sayings, at least
     */
    Pulse(InstantSource clock, Duration every, Consumer<Instant> saying) {
        this.clock = clock;
        this.every = every;
        this.saying = saying;
        this.last = clock.instant();
    }

    /** Something was read. */
    @Override
    public void run() {
        Instant now = clock.instant();
        if (Duration.between(last, now).compareTo(every) < 0) {
            return;
        }
        last = now;
        try {
            saying.accept(now);
        } catch (UnavailableException e) {
            // said again in a while; the upload itself may have nothing to keep before what is away is back
        }
    }
}
