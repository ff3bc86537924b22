package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.junit.jupiter.api.Test;
import org.seamtally.kept.UnavailableException;

/** The database's clock counts, whatever the machine's own says. */
class DatabaseClockTest {

    private static final Instant NOON = Instant.parse("2031-03-04T12:00:00Z");

    private Instant own = Instant.parse("1999-01-01T00:00:00Z");
    private Instant database = NOON;
    private long nanoseconds = 7;
    private Duration way = Duration.ZERO;
    private boolean away;

    private final DatabaseClock clock = new DatabaseClock(this::tell, () -> own, () -> nanoseconds);

    /** The answer takes its time on the way back. */
    private Instant tell() {
        if (away) {
            throw new UnavailableException("away", null);
        }
        Instant told = database;
        pass(way);
        return told;
    }

    private void pass(Duration time) {
        nanoseconds += time.toNanos();
        database = database.plus(time);
        own = own.plus(time);
    }

    @Test
    void untilTheDatabaseIsReachedTheMachinesOwnCounts() {
        away = true;
        assertThrows(UnavailableException.class, clock::read);
        assertEquals(own, clock.instant());
    }

    @Test
    void theMachinesOwnMayBeSetAtAnyMoment() {
        clock.read();
        own = own.plus(Duration.ofHours(3));
        pass(Duration.ofSeconds(90));
        assertEquals(NOON.plusSeconds(90), clock.instant());
        away = true;
        assertThrows(UnavailableException.class, clock::read);
        pass(Duration.ofSeconds(1));
        assertEquals(NOON.plusSeconds(91), clock.instant());
    }

    @Test
    void aSlowAnswerMovesNothingThatItDoesNotContradict() {
        clock.read();
        way = Duration.ofSeconds(3);
        clock.read();
        assertEquals(NOON.plusSeconds(3), clock.instant());
    }

    @Test
    void theFirstAnswerMayBeSlowAndTheNextOneMendsIt() {
        way = Duration.ofSeconds(3);
        clock.read();
        assertEquals(NOON, clock.instant());
        way = Duration.ZERO;
        clock.read();
        assertEquals(NOON.plusSeconds(3), clock.instant());
    }

    @Test
    void aDatabaseWhoseClockIsSetIsFollowed() {
        clock.read();
        database = NOON.plus(Duration.ofHours(2));
        clock.read();
        assertEquals(NOON.plus(Duration.ofHours(2)), clock.instant());
        database = NOON.minus(Duration.ofHours(1));
        way = Duration.ofMillis(5);
        clock.read();
        assertEquals(NOON.minus(Duration.ofHours(1)).plusMillis(5), clock.instant());
    }

    /** Whatever the machine is set to: this one's is right, so that both databases agree with it. */
    @Test
    void bothDatabasesTellTheTime() {
        for (Sql sql : new Sql[] {Databases.h2(), Databases.postgres()}) {
            try (DatabaseClock read = new DatabaseClock(sql)) {
                read.follow();
                Duration off = Duration.between(InstantSource.system().instant(), read.instant());
                assertTrue(off.abs().compareTo(Duration.ofMinutes(1)) < 0, () -> "off by " + off);
            }
        }
    }
}
