package org.seamtally.store;

import com.github.kagkarlsson.scheduler.Clock;
import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerBuilder;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.logging.LogLevel;
import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.time.Duration;
import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Predicate;
import org.jboss.logging.Logger;
import org.seamtally.batch.ChunkHands;
import org.seamtally.batch.KeptBatches.ChunkName;
import org.seamtally.batch.WorkStoppedException;
import org.seamtally.kept.UnavailableException;

/**
 * Hands chunks out, to the replicas that share the database, with a clustered task library. A chunk's task carries the
 * engine's version in its name, and a replica sees its own version's tasks alone. A task may be carried out twice: what it
 * calls keeps a chunk's results once.
 */
public final class ChunkTasks implements ChunkHands, AutoCloseable {

    private static final Logger LOG = Logger.getLogger(ChunkTasks.class);

    /** How often a task under way says that its replica lives. */
    private static final Duration HEARTBEAT = Duration.ofSeconds(1);

    /** Missed, a replica is dead and its tasks are handed out again: the fewest that the library takes. */
    private static final int MISSED_BEATS = 4;

    /** A look at an index; what was just sealed is not waited for in this way. */
    private static final Duration POLL = Duration.ofMillis(500);

    /** Between looks for chunks that have no task, which there are only after a kill or from a replica of another version. */
    private static final Duration SWEEP = Duration.ofSeconds(2);

    /** A frame takes a fraction of a second as a rule: one that takes longer than this is left. */
    private static final Duration STOP = Duration.ofSeconds(5);

    private static final Duration LONGEST_DELAY = Duration.ofMinutes(5);

    private final Sql sql;
    private final OpenChunks open;
    private final EngineAtWork atWork;
    private final String replica;
    private final Scheduler scheduler;
    private final InstantSource clock;
    private final ScheduledExecutorService sweeper = Executors.newSingleThreadScheduledExecutor(runnable -> {
        Thread thread = new Thread(runnable, "chunk-sweep");
        thread.setDaemon(true);
        return thread;
    });
    private final AtomicBoolean away = new AtomicBoolean();
    private volatile Backlog backlog = Backlog.NONE;
    private boolean started;

    /**
     * @param sql where chunks are kept, its tables made
     * @param engine version whose batches are worked on
     * @param work on one chunk, from kept to kept
     * @param workers chunks worked on at once
     * @param replica name of this process among those that share the database
     */
    public ChunkTasks(
            Sql sql, String engine, Predicate<ChunkName> work, int workers, String replica, InstantSource clock) {
        this.sql = sql;
        this.clock = clock;
        this.replica = replica;
        this.open = new OpenChunks(sql, engine);
        this.atWork = new EngineAtWork(sql, engine);
        OneTimeTask<Void> task = Tasks.oneTime(open.task())
                .onFailure(this::failed)
                .execute((instance, context) -> work.test(OpenChunks.name(instance.getId())));
        SchedulerBuilder builder = Scheduler.create(sql.source(), task)
                .tableName(OpenChunks.TABLE)
                .schedulerName(new SchedulerName.Fixed(replica))
                .jdbcCustomization(OwnTasks.of(sql.dialect(), open.task()))
                .clock((Clock) clock::instant)
                .threads(workers)
                .pollingInterval(POLL)
                .heartbeatInterval(HEARTBEAT)
                .missedHeartbeatsLimit(MISSED_BEATS)
                // a name that this version does not know is another's: never deleted
                .deleteUnresolvedAfter(Duration.ofDays(36_500))
                .shutdownMaxWait(STOP)
                // told here, once, with what will be done about it
                .failureLogging(LogLevel.OFF, false);
        scheduler = (sql.dialect().ofOneProcess()
                        ? builder
                        // whoever is idle takes no more than it can begin with: the rest is for other replicas
                        : builder.pollUsingLockAndFetch(0.5, 1.0))
                .build();
    }

    /** Starts to hand out. */
    public synchronized void start() {
        started = true;
        atWork.say(clock.instant());
        if (sql.dialect().ofOneProcess()) {
            open.freeAll();
        }
        scheduler.start();
        sweeper.scheduleWithFixedDelay(this::sweep, 0, SWEEP.toMillis(), TimeUnit.MILLISECONDS);
    }

    @Override
    public void more() {
        try {
            sweeper.execute(this::sweep);
        } catch (RejectedExecutionException e) {
            // this replica stops: the batch is kept, and found by another, or by the next start
            LOG.debug("Nothing is handed out any more.", e);
        }
    }

    private void sweep() {
        try {
            atWork.say(clock.instant());
            int found = open.makeTasks();
            backlog = Backlog.read(sql, open.task(), clock.instant());
            if (away.compareAndSet(true, false)) {
                LOG.info("What is kept can be reached again: batches go on.");
                scheduler.resume();
            }
            if (found > 0) {
                scheduler.triggerCheckForDueExecutions();
            }
        } catch (UnavailableException e) {
            if (away.compareAndSet(false, true)) {
                LOG.warnf("%s Batches wait until it is back. (%s)", e.getMessage(), Faults.root(e));
                scheduler.pause();
            }
        } catch (RuntimeException e) {
            // a thrown fault would end the sweeps
            LOG.error("Chunks could not be looked for; tried again soon.", e);
        }
    }

    /** What waits, as it was seen at the last look: some seconds old at most, unless the database is away. */
    public Backlog backlog() {
        return backlog;
    }

    private void failed(ExecutionComplete complete, ExecutionOperations<Void> operations) {
        Throwable cause = complete.getCause().orElse(null);
        int failures = complete.getExecution().consecutiveFailures;
        if (cause instanceof WorkStoppedException) {
            operations.reschedule(complete, complete.getExecution().executionTime);
            return;
        }
        Duration delay = Duration.ofSeconds(1);
        if (!(cause instanceof UnavailableException)) {
            delay = Duration.ofSeconds(1L << Math.min(failures, 20));
            delay = delay.compareTo(LONGEST_DELAY) > 0 ? LONGEST_DELAY : delay;
            LOG.errorf(
                    cause,
                    "Chunk %s failed for the %d. time; tried again in %d s.",
                    complete.getExecution().getId(),
                    failures + 1,
                    delay.toSeconds());
        }
        operations.reschedule(complete, clock.instant().plus(delay));
    }

    /** Stops to hand out; chunks under way are ended where that is a matter of seconds, and the others given back. */
    @Override
    public synchronized void close() {
        // not interrupted: the embedded database closes its file under a thread that is
        sweeper.shutdown();
        if (!started) {
            return;
        }
        started = false;
        scheduler.stop();
        try {
            open.freeOf(replica);
        } catch (UnavailableException e) {
            LOG.debug("Chunks in hand come back as a dead replica's do.", e);
        }
    }
}
