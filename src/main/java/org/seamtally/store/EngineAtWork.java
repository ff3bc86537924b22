package org.seamtally.store;

import java.time.Duration;
import java.time.Instant;

/**
 * Says that a version of the engine is at work on the batches that are kept here, so that those of another are seen to wait
 * for it. It decides nothing: who works on what is the task library's business.
 */
final class EngineAtWork {

    /** A replica that stopped is taken to be at work for so long: longer than a restart takes. */
    private static final Duration LEASE = Duration.ofMinutes(1);

    /** Thrice within a lease. */
    private static final Duration SAID_EVERY = Duration.ofSeconds(20);

    /** Where one process alone works there is nobody to say otherwise, and the file is left in peace. */
    private static final Instant ALWAYS = Instant.parse("9999-01-01T00:00:00Z");

    private final Sql sql;
    private final String engine;
    private Instant said;

    EngineAtWork(Sql sql, String engine) {
        this.sql = sql;
        this.engine = engine;
    }

    /** Says so, unless that was done a short while ago. */
    void say(Instant now) {
        boolean alone = sql.dialect().ofOneProcess();
        if (said != null && (alone || Duration.between(said, now).abs().compareTo(SAID_EVERY) < 0)) {
            return;
        }
        keep(alone ? ALWAYS : now.plus(LEASE), alone);
        said = now;
    }

    private void keep(Instant until, boolean alone) {
        try {
            sql.in(handle -> {
                if (alone) {
                    handle.createUpdate("delete from engine_at_work where engine <> :engine")
                            .bind("engine", engine)
                            .execute();
                }
                int there = handle.createUpdate("update engine_at_work set lives_until = :until where engine = :engine")
                        .bind("until", until)
                        .bind("engine", engine)
                        .execute();
                return there == 1
                        ? there
                        : handle.createUpdate("insert into engine_at_work (engine, lives_until)"
                                        + " values (:engine, :until)")
                                .bind("engine", engine)
                                .bind("until", until)
                                .execute();
            });
        } catch (RuntimeException e) {
            if (!Faults.isDuplicate(e)) {
                throw e;
            }
            // another replica said it for the first time at the same moment
        }
    }
}
