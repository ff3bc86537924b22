package org.seamtally.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.ChunkResult;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatch;
import org.seamtally.batch.KeptBatches;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;

/**
 * Batches in SQL. A batch's row is locked by what ends it and by what adds to it, so that a chunk's results never come into
 * a batch that was cancelled or removed.
 */
public final class SqlBatches implements KeptBatches {

    private static final String BATCHES = "select b.*, coalesce(r.chunks_done, 0) chunks_done,"
            + " coalesce(r.frames_read, 0) frames_read, coalesce(r.frames_done, 0) frames_done,"
            + " coalesce(r.frames_refused, 0) frames_refused, r.first_done, r.last_done, exists (select 1"
            + " from engine_at_work e where e.engine = b.engine and e.lives_until > :now) at_work"
            + " from (select * from batch where shop = :shop and sealed_at is not null %s) b"
            + " left join (select batch, count(*) chunks_done, sum(frames_read) frames_read, sum(frames_done) frames_done,"
            + " sum(frames_refused) frames_refused, min(finished_at) first_done, max(finished_at) last_done"
            + " from chunk_result where shop = :shop %s group by batch) r on r.batch = b.id"
            + " order by b.created_at desc, b.id desc";

    // a batch that is being removed is not
    private static final String IS_THERE =
            " and exists (select 1 from batch where id = :batch and sealed_at is not null)";

    private final Sql sql;
    private final InstantSource clock;
    private final BatchRemoval removal;

    /**
     * @param sql where they are kept
     * @param clock tells when something was added to an upload, and which engines are at work
     */
    public SqlBatches(Sql sql, InstantSource clock) {
        this.sql = sql;
        this.clock = clock;
        this.removal = new BatchRemoval(sql);
    }

    @Override
    public void begin(BatchPlan plan) {
        sql.in(handle -> handle.createUpdate("insert into batch (id, shop, engine, units, form, created_at, touched_at,"
                        + " name) values (:id, :shop, :engine, :units, :form, :at, :now, :name)")
                .bind("id", plan.id())
                .bind("shop", plan.shop())
                .bind("engine", plan.engine())
                .bind("units", plan.units())
                .bind("form", plan.form().name())
                .bind("at", plan.at())
                .bind("now", clock.instant())
                .bind("name", plan.name().orElse(null))
                .execute());
    }

    @Override
    public void touch(String shop, UUID batch) {
        sql.in(handle -> touched(handle, shop, batch));
    }

    private int touched(Handle handle, String shop, UUID batch) {
        return handle.createUpdate("update batch set touched_at = :now"
                        + " where id = :id and shop = :shop and sealed_at is null and removed_at is null")
                .bind("now", clock.instant())
                .bind("id", batch)
                .bind("shop", shop)
                .execute();
    }

    @Override
    public void add(String shop, UUID batch, int chunk, Chunk frames) {
        sql.in(handle -> {
            uploadIsThere(touched(handle, shop, batch));
            return handle.createUpdate("insert into batch_chunk (batch, chunk, shop, frames, content)"
                            + " values (:batch, :chunk, :shop, :frames, :content)")
                    .bind("batch", batch)
                    .bind("chunk", chunk)
                    .bind("shop", shop)
                    .bind("frames", frames.frames())
                    .bind("content", frames.bytes())
                    .execute();
        });
    }

    @Override
    public void seal(String shop, UUID batch, Sealed sealed, SettledKey key) {
        sql.in(handle -> {
            int ended = handle.createUpdate("update batch set sealed_at = :at, chunks = :chunks, frames = :frames,"
                            + " digest = :digest where id = :id and shop = :shop and sealed_at is null"
                            + " and removed_at is null")
                    .bind("at", sealed.at())
                    .bind("chunks", sealed.chunks())
                    .bind("frames", sealed.frames())
                    .bind("digest", sealed.digest())
                    .bind("id", batch)
                    .bind("shop", shop)
                    .execute();
            uploadIsThere(ended);
            if (key != null) {
                SqlKeys.settle(handle, key, sealed.at());
            }
            return ended;
        });
    }

    private static void uploadIsThere(int rows) {
        if (rows == 0) {
            throw new UnavailableException(
                    "The upload stood still for too long and was given up: send it again.", null);
        }
    }

    @Override
    public void discard(String shop, UUID batch) {
        removal.discard(shop, batch, clock.instant());
    }

    @Override
    public int discardBrokenOff(Instant since) {
        return removal.brokenOff(since, clock.instant());
    }

    @Override
    public Optional<KeptBatch> find(String shop, UUID batch) {
        return sql.in(handle -> handle.createQuery(BATCHES.formatted("and id = :id", "and batch = :id"))
                .bind("shop", shop)
                .bind("now", clock.instant())
                .bind("id", batch)
                .map((row, context) -> batch(row))
                .findOne());
    }

    @Override
    public List<KeptBatch> list(String shop, int limit, UUID after) {
        String page = (after == null
                        ? ""
                        : "and (created_at, id) < (select created_at, id from batch where id = :after and shop = :shop)")
                + " order by created_at desc, id desc fetch first :limit rows only";
        String those = "and batch in (select id from batch where shop = :shop and sealed_at is not null " + page + ")";
        return sql.in(handle -> {
            var query = handle.createQuery(BATCHES.formatted(page, those))
                    .bind("shop", shop)
                    .bind("now", clock.instant())
                    .bind("limit", limit);
            if (after != null) {
                query.bind("after", after);
            }
            return query.map((row, context) -> batch(row)).list();
        });
    }

    private static KeptBatch batch(ResultSet row) throws SQLException {
        return new KeptBatch(
                new BatchPlan(
                        row.getObject("id", UUID.class),
                        row.getString("shop"),
                        row.getString("engine"),
                        row.getString("units"),
                        Form.valueOf(row.getString("form")),
                        InstantColumn.of(row, "created_at"),
                        Optional.ofNullable(row.getString("name"))),
                row.getBoolean("at_work"),
                new Sealed(
                        row.getInt("chunks"),
                        row.getLong("frames"),
                        row.getString("digest"),
                        InstantColumn.of(row, "sealed_at")),
                Optional.ofNullable(InstantColumn.of(row, "cancelled_at")),
                row.getInt("chunks_done"),
                counts(row),
                Optional.ofNullable(InstantColumn.of(row, "first_done")),
                Optional.ofNullable(InstantColumn.of(row, "last_done")));
    }

    private static Counts counts(ResultSet row) throws SQLException {
        return new Counts(row.getLong("frames_read"), row.getLong("frames_done"), row.getLong("frames_refused"));
    }

    @Override
    public Optional<Chunk> chunk(UUID batch, int chunk) {
        return sql.in(handle -> handle.createQuery(
                        "select c.frames, c.content from batch_chunk c join batch b on b.id = c.batch"
                                + " where c.batch = :batch and c.chunk = :chunk and b.sealed_at is not null")
                .bind("batch", batch)
                .bind("chunk", chunk)
                .map((row, context) -> new Chunk(row.getInt("frames"), row.getBytes("content")))
                .findOne());
    }

    @Override
    public boolean finish(UUID batch, int chunk, ChunkResult result, Instant at) {
        try {
            return sql.in(handle -> {
                Optional<String> shop = running(handle, batch);
                shop.ifPresent(owner -> handle.createUpdate("insert into chunk_result (batch, chunk, shop, frames_read,"
                                + " frames_done, frames_refused, finished_at, lines, refusals, totals) values (:batch,"
                                + " :chunk, :shop, :read, :done, :refused, :at, :lines, :refusals, :totals)")
                        .bind("batch", batch)
                        .bind("chunk", chunk)
                        .bind("shop", owner)
                        .bind("read", result.counts().read())
                        .bind("done", result.counts().done())
                        .bind("refused", result.counts().refused())
                        .bind("at", at)
                        .bind("lines", result.lines())
                        .bind("refusals", result.refusals())
                        .bind("totals", result.totals())
                        .execute());
                return shop.isPresent();
            });
        } catch (RuntimeException e) {
            if (Faults.isDuplicate(e)) {
                return false;
            }
            throw e;
        }
    }

    /** Locks a batch that takes results; its shop. */
    private static Optional<String> running(Handle handle, UUID batch) {
        return handle.createQuery("select shop from batch"
                        + " where id = :id and sealed_at is not null and cancelled_at is null for update")
                .bind("id", batch)
                .mapTo(String.class)
                .findOne();
    }

    @Override
    public Optional<ChunkLines> lines(String shop, UUID batch, int chunk) {
        return ofResult(
                ", lines", shop, batch, chunk, (row, context) -> new ChunkLines(counts(row), row.getBytes("lines")));
    }

    @Override
    public Optional<ChunkLines> refusals(String shop, UUID batch, int chunk) {
        return ofResult(
                ", refusals",
                shop,
                batch,
                chunk,
                (row, context) -> new ChunkLines(counts(row), row.getBytes("refusals")));
    }

    @Override
    public Optional<Counts> counts(String shop, UUID batch, int chunk) {
        return ofResult("", shop, batch, chunk, (row, context) -> counts(row));
    }

    /** @param columns besides the counts: lines may be megabytes, and are read only where they are asked for */
    private <T> Optional<T> ofResult(String columns, String shop, UUID batch, int chunk, RowMapper<T> mapper) {
        return sql.in(handle -> handle.createQuery("select frames_read, frames_done, frames_refused" + columns
                        + " from chunk_result where batch = :batch and chunk = :chunk and shop = :shop"
                        + IS_THERE)
                .bind("batch", batch)
                .bind("chunk", chunk)
                .bind("shop", shop)
                .map(mapper)
                .findOne());
    }

    @Override
    public List<byte[]> totals(String shop, UUID batch) {
        return sql.in(
                handle -> handle.createQuery("select totals from chunk_result where batch = :batch and shop = :shop"
                                + IS_THERE
                                + " order by chunk")
                        .bind("batch", batch)
                        .bind("shop", shop)
                        .map((row, context) -> row.getBytes("totals"))
                        .list());
    }

    @Override
    public boolean cancel(String shop, UUID batch, Instant at) {
        return sql.in(handle -> {
            boolean cancelled = running(handle, batch).filter(shop::equals).isPresent()
                    && handle.createUpdate("update batch set cancelled_at = :at where id = :id"
                                            + " and chunks > (select count(*) from chunk_result where batch = :id)")
                                    .bind("at", at)
                                    .bind("id", batch)
                                    .execute()
                            == 1;
            if (cancelled) {
                LeftTasks.removeOf(handle, batch);
            }
            return cancelled;
        });
    }

    @Override
    public void remove(String shop, UUID batch) {
        removal.ended(shop, batch, clock.instant());
    }

    @Override
    public int removeEnded(Instant before) {
        return removal.endedBefore(before, clock.instant());
    }
}
