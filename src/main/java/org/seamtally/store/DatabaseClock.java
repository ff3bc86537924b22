package org.seamtally.store;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.jboss.logging.Logger;
import org.seamtally.kept.UnavailableException;

/**
 * The database's clock: replicas judge each other's heartbeats, claims and retention by it, and what they keep has its times.
 * The machine's own clock may be wrong or set at any moment, and counts only until the database is reached for the first time.
 * From then on it goes by what has elapsed, and is corrected where the database contradicts it.
 */
public final class DatabaseClock implements InstantSource, AutoCloseable {

    private static final Logger LOG = Logger.getLogger(DatabaseClock.class);

    /** A replica counts as dead after four seconds: a database whose own clock is set is followed sooner than that. */
    private static final Duration READ_EVERY = Duration.ofSeconds(2);

    private final Supplier<Instant> database;
    private final InstantSource own;
    private final LongSupplier nanoseconds;
    private final ScheduledExecutorService reader = Executors.newSingleThreadScheduledExecutor(runnable -> {
        Thread thread = new Thread(runnable, "database-clock");
        thread.setDaemon(true);
        return thread;
    });

    private record Reading(Instant at, long nanoseconds) {}

    private volatile Reading last;

    /** @param sql of the database */
    public DatabaseClock(Sql sql) {
        this(
                () -> sql.in(handle -> handle.createQuery("select current_timestamp")
                        .mapTo(Instant.class)
                        .one()),
                InstantSource.system(),
                System::nanoTime);
    }

    /**
     * A clock by any other.
     *
     * @param database tells the time there; may throw {@link UnavailableException}
     * @param own of this machine
     * @param nanoseconds since some moment
     */
    DatabaseClock(Supplier<Instant> database, InstantSource own, LongSupplier nanoseconds) {
        this.database = database;
        this.own = own;
        this.nanoseconds = nanoseconds;
    }

    /** Reads the database's clock, and from now on again and again. */
    public void follow() {
        read();
        reader.scheduleWithFixedDelay(
                this::readAgain, READ_EVERY.toMillis(), READ_EVERY.toMillis(), TimeUnit.MILLISECONDS);
    }

    private void readAgain() {
        try {
            read();
        } catch (UnavailableException e) {
            LOG.debug("The database's clock could not be read; what has elapsed is counted.", e);
        } catch (RuntimeException e) {
            // a thrown fault would end the readings
            LOG.error("The database's clock could not be read; tried again soon.", e);
        }
    }

    /** Reads it once. Its answer was true at some moment between the question and now: within that nothing is corrected. */
    void read() {
        long asked = nanoseconds.getAsLong();
        Instant told = database.get();
        long now = nanoseconds.getAsLong();
        Reading before = last;
        if (before == null || told.isAfter(at(before, now))) {
            last = new Reading(told, now);
        } else if (told.isBefore(at(before, asked))) {
            last = new Reading(told, asked);
        }
    }

    private static Instant at(Reading reading, long nanoseconds) {
        return reading.at.plusNanos(nanoseconds - reading.nanoseconds);
    }

    @Override
    public Instant instant() {
        Reading reading = last;
        return reading == null ? own.instant() : at(reading, nanoseconds.getAsLong());
    }

    @Override
    public void close() {
        // not interrupted: the embedded database closes its file under a thread that is
        reader.shutdown();
    }
}
