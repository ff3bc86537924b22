package org.seamtally.store;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.IntSupplier;
import org.jboss.logging.Logger;
import org.seamtally.batch.KeptBatches;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.UnavailableException;

/**
 * What goes on beside the requests: tables are made as soon as the database is there, work on batches is begun then, and
 * what is no longer to be kept is swept. Nothing waits for it.
 */
public final class Housekeeping implements AutoCloseable {

    private static final Logger LOG = Logger.getLogger(Housekeeping.class);

    private static final Duration RETRY = Duration.ofSeconds(1);

    private static final Duration SWEEP = Duration.ofMinutes(1);

    private final Sql sql;
    private final KeptBatches batches;
    private final IdempotencyKeys keys;
    private final Retention retention;
    private final Runnable whenReady;
    private final InstantSource clock;
    private final Instant born;
    private final ScheduledThreadPoolExecutor thread = new ScheduledThreadPoolExecutor(1, runnable -> {
        Thread named = new Thread(runnable, "kept");
        named.setDaemon(true);
        return named;
    });
    private boolean told;

    /**
     * @param sql where things are kept, its tables not yet made
     * @param whenReady done once, when they are
     */
    public Housekeeping(
            Sql sql,
            KeptBatches batches,
            IdempotencyKeys keys,
            Retention retention,
            Runnable whenReady,
            InstantSource clock) {
        this.sql = sql;
        this.batches = batches;
        this.keys = keys;
        this.retention = retention;
        this.whenReady = whenReady;
        this.clock = clock;
        this.born = clock.instant();
        thread.setExecuteExistingDelayedTasksAfterShutdownPolicy(false);
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
            if (!thread.isShutdown()) {
                thread.schedule(this::makeReady, RETRY.toMillis(), TimeUnit.MILLISECONDS);
            }
        }
    }

    /** Sweeps once: each kind by itself, so that a fault with one leaves the others. */
    void sweep() {
        Instant now = clock.instant();
        sweep("uploads that broke off", () -> batches.discardBrokenOff(now.minus(KeptBatches.BROKEN_OFF)));
        retention
                .batches()
                .ifPresent(kept -> sweep("batches that ended long ago", () -> batches.removeEnded(now.minus(kept))));
        sweep("keys that were used long ago", () -> keys.forget(now.minus(retention.keys())));
        sweep("tasks that nobody will carry out", () -> new LeftTasks(sql).removeOfEnginesGone(now));
    }

    private static void sweep(String what, IntSupplier removed) {
        try {
            int swept = removed.getAsInt();
            if (swept > 0) {
                LOG.infof("Removed: %d %s.", swept, what);
            }
        } catch (UnavailableException e) {
            LOG.debugf(e, "To be removed, tried again in a minute: %s.", what);
        } catch (RuntimeException e) {
            // a thrown fault would end the sweeps
            LOG.errorf(e, "Could not be removed, tried again in a minute: %s.", what);
        }
    }

    /** Ends it. What is under way is not interrupted: the embedded database closes its file under a thread that is. */
    @Override
    public void close() {
        thread.shutdown();
    }
}
