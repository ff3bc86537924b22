package org.seamtally.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jdbi.v3.core.statement.Query;
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

    private static final String BATCHES = "select b.*, exists (select 1 from engine_at_work e"
            + " where e.engine = b.engine and e.lives_until > :now) at_work"
            + " from batch b where b.shop = :shop and b.sealed_at is not null ";

    // a question of its own: in one with the batches' the embedded database asks it anew for each of them
    private static final String PROGRESS = "select batch, count(*) chunks_done, sum(frames_read) frames_read,"
            + " sum(frames_done) frames_done, sum(frames_refused) frames_refused, min(finished_at) first_done,"
            + " max(finished_at) last_done from chunk_result where shop = :shop and batch in (<batches>) group by batch";

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
        return sql.in(handle ->
                batches(
                                handle,
                                shop,
                                handle.createQuery(BATCHES + "and b.id = :id").bind("id", batch))
                        .stream()
                        .findFirst());
    }

    @Override
    public List<KeptBatch> list(String shop, int limit, UUID after) {
        return sql.in(handle -> {
            Query query = handle.createQuery(page(after != null)).bind("limit", limit);
            if (after != null) {
                Optional<Instant> at = created(handle, shop, after);
                if (at.isEmpty()) {
                    return List.of();
                }
                query.bind("at", at.get()).bind("after", after);
            }
            return batches(handle, shop, query);
        });
    }

    /**
     * The query of a page: in the order of all of an index's columns, so that no more rows are read than are shown.
     *
     * @param older whether it goes on after a batch: the bound on the time alone says where in the index to begin
     */
    static String page(boolean older) {
        return BATCHES
                + (older ? "and b.created_at <= :at and (b.created_at, b.id) < (:at, :after)" : "")
                + " order by b.shop desc, b.created_at desc, b.id desc fetch first :limit rows only";
    }

    private static Optional<Instant> created(Handle handle, String shop, UUID batch) {
        return handle.createQuery("select created_at from batch where id = :id and shop = :shop")
                .bind("id", batch)
                .bind("shop", shop)
                .map((row, context) -> InstantColumn.of(row, "created_at"))
                .findOne();
    }

    /** What a query of batches finds, each with how far it has come. */
    private List<KeptBatch> batches(Handle handle, String shop, Query query) {
        List<KeptBatch> found = query.bind("shop", shop)
                .bind("now", clock.instant())
                .map((row, context) -> notBegun(row))
                .list();
        if (found.isEmpty()) {
            return List.of();
        }
        Map<UUID, Progress> progress = handle.createQuery(PROGRESS)
                .bind("shop", shop)
                .bindList(
                        "batches",
                        found.stream().map(batch -> batch.plan().id()).toList())
                .map((row, context) -> Map.entry(row.getObject("batch", UUID.class), progress(row)))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
        return found.stream()
                .map(batch -> {
                    Progress come = progress.get(batch.plan().id());
                    return come == null ? batch : come.of(batch);
                })
                .toList();
    }

    private static KeptBatch notBegun(ResultSet row) throws SQLException {
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
                0,
                Counts.NONE,
                Optional.empty(),
                Optional.empty());
    }

    /** What is done of a batch: at least one chunk. */
    private record Progress(int chunksDone, Counts counts, Instant first, Instant last) {

        KeptBatch of(KeptBatch batch) {
            return new KeptBatch(
                    batch.plan(),
                    batch.engineAtWork(),
                    batch.sealed(),
                    batch.cancelled(),
                    chunksDone,
                    counts,
                    Optional.of(first),
                    Optional.of(last));
        }
    }

    private static Progress progress(ResultSet row) throws SQLException {
        return new Progress(
                row.getInt("chunks_done"),
                counts(row),
                InstantColumn.of(row, "first_done"),
                InstantColumn.of(row, "last_done"));
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
