package org.seamtally.store;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * What waits in batches of this engine's version, all replicas together.
 *
 * @param chunks that are not worked out, those under way among them
 * @param lag since the oldest of them was handed in; nought where there is none
 */
public record Backlog(long chunks, Duration lag) {

    static final Backlog NONE = new Backlog(0, Duration.ZERO);

    static Backlog read(Sql sql, String task, Instant now) {
        return sql.in(handle -> handle.createQuery(
                        "select count(*), min(execution_time) from " + OpenChunks.TABLE + " where task_name = :task")
                .bind("task", task)
                .map((row, context) -> {
                    Optional<Instant> oldest = Optional.ofNullable(row.getObject(2, OffsetDateTime.class))
                            .map(OffsetDateTime::toInstant);
                    return new Backlog(
                            row.getLong(1), oldest.map(since -> lag(since, now)).orElse(Duration.ZERO));
                })
                .one());
    }

    /** One that failed is due again later: it does not wait in the meantime. */
    private static Duration lag(Instant since, Instant now) {
        return now.isAfter(since) ? Duration.between(since, now) : Duration.ZERO;
    }
}
