package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamtally.kept.UnavailableException;

class PulseTest {

    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final Duration EVERY = Duration.ofSeconds(10);

    private final SettableClock clock = new SettableClock(START);
    private final List<Instant> said = new ArrayList<>();

    @Test
    void itIsSaidAgainOnceTheTimeHasPassed() {
        Pulse pulse = new Pulse(clock, EVERY, said::add);
        pulse.run();
        clock.pass(EVERY.minusNanos(1));
        pulse.run();
        assertEquals(List.of(), said);
        Instant first = clock.pass(Duration.ofNanos(1));
        pulse.run();
        pulse.run();
        assertEquals(List.of(first), said);
        Instant second = clock.pass(EVERY);
        pulse.run();
        assertEquals(List.of(first, second), said);
    }

    @Test
    void whereNobodyCouldBeToldItIsSaidTheNextTime() {
        Pulse pulse = new Pulse(clock, EVERY, now -> {
            said.add(now);
            if (said.size() == 1) {
                throw new UnavailableException("away", null);
            }
        });
        clock.pass(EVERY);
        pulse.run();
        clock.pass(EVERY);
        pulse.run();
        assertEquals(List.of(START.plus(EVERY), START.plus(EVERY).plus(EVERY)), said);
    }
}
