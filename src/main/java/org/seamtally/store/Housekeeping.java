package org.seamtally.store;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.seamtally.batch.KeptBatches;
import org.seamtally.kept.UnavailableException;

/**
 * What goes on beside the requests: tables are made as soon as the database is there, work on batches is begun then, and
 * uploads that broke off are swept. Nothing waits for it.
 */
public final class Housekeeping implements AutoCloseable {

    private static final Logger LOG = Logger.getLogger(Housekeeping.class);

    private static final Duration RETRY = Duration.ofSeconds(1);

    private static final Duration SWEEP = Duration.ofMinutes(1);

    /** A client that sends nothing for so long will not go on. */
    private static final Duration BROKEN_OFF = Duration.ofMinutes(15);

    private final Sql sql;
    private final KeptBatches batches;
    private final Runnable whenReady;
    private final InstantSource clock;
    private final Instant born;
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(runnable -> {
        Thread named = new Thread(runnable, "kept");
        named.setDaemon(true);
        return named;
    });
    private boolean told;

    /**
     * @param sql where things are kept, its tables not yet made
     * @param whenReady done once, when they are
     */
    public Housekeeping(Sql sql, KeptBatches batches, Runnable whenReady, InstantSource clock) {
        this.sql = sql;
        this.batches = batches;
        this.whenReady = whenReady;
        this.clock = clock;
        this.born = clock.instant();
    }

    /** Begins it. */
    public void start() {
        thread.execute(this::makeReady);
    }

    private void makeReady() {
        try {
            sql.migrate();
            if (sql.dialect().ofOneProcess()) {
                // whoever sent them spoke to a process that is gone
                batches.discardBrokenOff(born);
            }
            whenReady.run();
            if (told) {
                LOG.info("What is kept can be reached now.");
            }
            thread.scheduleWithFixedDelay(this::sweep, SWEEP.toMillis(), SWEEP.toMillis(), TimeUnit.MILLISECONDS);
        } catch (RuntimeException e) {
            if (!told) {
                told = true;
                LOG.warnf("%s Tried again until it can; estimates go on. (%s)", e.getMessage(), Faults.root(e));
            }
            thread.schedule(this::makeReady, RETRY.toMillis(), TimeUnit.MILLISECONDS);
        }
    }

    private void sweep() {
        try {
            int swept = batches.discardBrokenOff(clock.instant().minus(BROKEN_OFF));
            if (swept > 0) {
                LOG.infof("%d uploads that broke off were removed.", swept);
            }
        } catch (UnavailableException e) {
            LOG.debug("Uploads that broke off are looked for again in a minute.", e);
        } catch (RuntimeException e) {
            // a thrown fault would end the sweeps
            LOG.error("Uploads that broke off could not be removed; tried again in a minute.", e);
        }
    }

    @Override
    public void close() {
        thread.shutdownNow();
    }
}
