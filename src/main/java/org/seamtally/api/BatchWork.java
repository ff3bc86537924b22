package org.seamtally.api;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.ShutdownDelayInitiatedEvent;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Instance;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.batch.Batches;
import org.seamtally.batch.KeptBatches;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.store.ChunkTasks;
import org.seamtally.store.DatabaseClock;
import org.seamtally.store.Housekeeping;
import org.seamtally.store.Retention;
import org.seamtally.store.Sql;
import org.seamtally.wire.Engine;

/** Puts batches together: where they are kept, who works on them, with what engine. */
@ApplicationScoped
public class BatchWork {

    @Produces
    @Singleton
    Batches batches(
            KeptBatches kept,
            IdempotencyKeys keys,
            ChunkTasks hands,
            Engine engine,
            FrameCounters counters,
            Admission admission,
            InstantSource clock) {
        return new Batches(
                kept,
                keys,
                hands,
                units -> admission.afterEstimates(
                        counters.counted(FrameCounters.From.BATCH, group -> engine.jobLines(group, units))),
                version(engine),
                clock,
                UUID::randomUUID);
    }

    /** @param batches what the tasks call, which itself tells them when there are more */
    @Produces
    @Singleton
    ChunkTasks tasks(
            Sql sql,
            Instance<Batches> batches,
            Engine engine,
            InstantSource clock,
            @ConfigProperty(name = "seamtally.batch.workers") Optional<Integer> workers) {
        return new ChunkTasks(
                sql,
                version(engine),
                chunk -> batches.get().work(chunk),
                workers.orElseGet(() -> Runtime.getRuntime().availableProcessors()),
                replica(),
                clock);
    }

    /** A name that no other process has, now or later; its number in front, for whoever looks into the database. */
    private static String replica() {
        return ProcessHandle.current().pid() + "@" + UUID.randomUUID();
    }

    @Produces
    @Singleton
    Housekeeping housekeeping(
            Sql sql,
            KeptBatches kept,
            IdempotencyKeys keys,
            Retention retention,
            ChunkTasks tasks,
            DatabaseClock clock) {
        Runnable whenReady = () -> {
            clock.follow();
            tasks.start();
        };
        return new Housekeeping(sql, kept, keys, retention, whenReady, clock);
    }

    @Produces
    @Singleton
    Retention retention(
            @ConfigProperty(name = "seamtally.retention.batches") Optional<Duration> batches,
            @ConfigProperty(name = "seamtally.retention.keys") Duration keys) {
        return new Retention(batches, keys);
    }

    void started(@Observes StartupEvent event, Housekeeping housekeeping, ChunkTasks tasks, MeterRegistry metrics) {
        housekeeping.start();
        Gauge.builder("seamtally.batch.waiting", tasks, of -> of.backlog().chunks())
                .description("Chunks of batches that are not worked out")
                .register(metrics);
        Gauge.builder("seamtally.batch.lag", tasks, of -> of.backlog().lag().toMillis() / 1e3)
                .description("Since the oldest of them was handed in")
                .baseUnit("seconds")
                .register(metrics);
    }

    /** At once, while requests are still answered: another replica can do the chunks meanwhile. */
    void stopping(@Observes ShutdownDelayInitiatedEvent event, Batches batches, ChunkTasks tasks) {
        batches.stop();
        tasks.close();
    }

    /** While the database can still be told what was ended and what was not. */
    void stopped(
            @Observes ShutdownEvent event,
            Batches batches,
            ChunkTasks tasks,
            Housekeeping housekeeping,
            DatabaseClock clock) {
        housekeeping.close();
        batches.stop();
        tasks.close();
        clock.close();
    }

    /** Figures of one batch come from one version of the engine with one catalogue. */
    private static String version(Engine engine) {
        return engine.identity().version() + " " + engine.identity().catalogue();
    }
}
