package org.seamtally.batch;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.atomic.AtomicReference;

/** A clock that stands still until it is told to go on. */
public final class SettableClock implements InstantSource {

    private final AtomicReference<Instant> now;

    public SettableClock(Instant start) {
        now = new AtomicReference<>(start);
    }

    @Override
    public Instant instant() {
        return now.get();
    }

    /** Goes on by so much; the new time. */
    public Instant pass(Duration duration) {
        return now.updateAndGet(instant -> instant.plus(duration));
    }
}
