package org.seamtally.store;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/**
 * Takes batches and uploads out. The first transaction makes one unseen, whole; the others take its rows a few chunks at a
 * time, so that none grows with the batch, and the last the batch's own. What a fault leaves of that is taken by the next
 * sweep.
 */
final class BatchRemoval {

    /** Chunks in one transaction: with their results some megabytes. */
    private static final int FEW = 16;

    /** An upload that is under way, or a removal. */
    private static final String HIDE_UPLOAD =
            "update batch set removed_at = coalesce(removed_at, :now) where id = :id" + " and sealed_at is null and ";

    private static final String BROKEN_OFF = "(removed_at is not null or touched_at < :since)";

    private static final String HIDE_ENDED = "update batch set sealed_at = null, removed_at = :now where id = :id"
            + " and shop = :shop and sealed_at is not null and (cancelled_at is not null"
            + " or chunks = (select count(*) from chunk_result where batch = :id))";

    private static final String ENDED_BEFORE = "select id, shop from batch b where sealed_at is not null"
            + " and created_at < :before and (cancelled_at < :before or cancelled_at is null"
            + " and chunks = (select count(*) from chunk_result r where r.batch = b.id)"
            + " and (select max(finished_at) from chunk_result r where r.batch = b.id) < :before)";

    private final Sql sql;

    BatchRemoval(Sql sql) {
        this.sql = sql;
    }

    /** An upload, whenever it was touched. */
    void discard(String shop, UUID batch, Instant now) {
        hide(
                batch,
                handle -> handle.createUpdate(HIDE_UPLOAD + "shop = :shop")
                        .bind("id", batch)
                        .bind("shop", shop)
                        .bind("now", now)
                        .execute());
    }

    /** Uploads that nobody touched since then, and removals that were broken off; how many. */
    int brokenOff(Instant since, Instant now) {
        List<UUID> found =
                sql.in(handle -> handle.createQuery("select id from batch where sealed_at is null and " + BROKEN_OFF)
                        .bind("since", since)
                        .mapTo(UUID.class)
                        .list());
        int gone = 0;
        for (UUID batch : found) {
            gone += hide(
                    batch,
                    handle -> handle.createUpdate(HIDE_UPLOAD + BROKEN_OFF)
                            .bind("id", batch)
                            .bind("since", since)
                            .bind("now", now)
                            .execute());
        }
        return gone;
    }

    /** A batch where it has ended; whether it had. */
    boolean ended(String shop, UUID batch, Instant now) {
        int hidden = hide(batch, handle -> {
            int rows = handle.createUpdate(HIDE_ENDED)
                    .bind("id", batch)
                    .bind("shop", shop)
                    .bind("now", now)
                    .execute();
            if (rows == 1) {
                LeftTasks.removeOf(handle, batch);
            }
            return rows;
        });
        return hidden == 1;
    }

    /** Batches that ended before then; how many. */
    int endedBefore(Instant before, Instant now) {
        List<Named> found = sql.in(handle -> handle.createQuery(ENDED_BEFORE)
                .bind("before", before)
                .map((row, context) -> new Named(row.getString("shop"), row.getObject("id", UUID.class)))
                .list());
        int gone = 0;
        for (Named batch : found) {
            gone += ended(batch.shop, batch.id, now) ? 1 : 0;
        }
        return gone;
    }

    private record Named(String shop, UUID id) {}

    private int hide(UUID batch, Function<Handle, Integer> hiding) {
        int hidden = sql.in(hiding);
        if (hidden == 1) {
            takeRows(batch);
        }
        return hidden;
    }

    private void takeRows(UUID batch) {
        int last = sql.in(
                handle -> handle.createQuery("select coalesce(max(chunk), -1) from batch_chunk where batch = :batch")
                        .bind("batch", batch)
                        .mapTo(Integer.class)
                        .one());
        for (int from = 0; from <= last; from += FEW) {
            int first = from;
            sql.in(handle -> take(handle, "chunk_result", batch, first) + take(handle, "batch_chunk", batch, first));
        }
        sql.in(handle -> handle.createUpdate("delete from batch where id = :batch and removed_at is not null")
                .bind("batch", batch)
                .execute());
    }

    private static int take(Handle handle, String table, UUID batch, int from) {
        return handle.createUpdate(
                        "delete from " + table + " where batch = :batch and chunk >= :from and chunk < :from + " + FEW)
                .bind("batch", batch)
                .bind("from", from)
                .execute();
    }
}
