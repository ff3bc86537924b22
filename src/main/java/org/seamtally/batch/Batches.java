package org.seamtally.batch;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.UnavailableException;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.BatchAnswer;
import org.seamtally.wire.BatchSummaryAnswer;
import org.seamtally.wire.JobTotals;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.RefusedException;

/**
 * Kept batches: they are received, worked on chunk by chunk, asked about, and removed. Every method may throw
 * {@link UnavailableException}.
 */
public final class Batches {

    /** The endpoint that keys of uploads belong to. */
    private static final String DOOR = "batches";

    private final KeptBatches kept;
    private final IdempotencyKeys keys;
    private final ChunkHands hands;
    private final Function<UnitSystem, FrameWork> work;
    private final String engine;
    private final InstantSource clock;
    private final Supplier<UUID> ids;
    private final Reception reception;
    private volatile boolean stopped;

    /**
     * Batches with chunks of the usual size.
     *
     * @param work the engine in the units asked for
     * @param engine its version, with its catalogue
     */
    public Batches(
            KeptBatches kept,
            IdempotencyKeys keys,
            ChunkHands hands,
            Function<UnitSystem, FrameWork> work,
            String engine,
            InstantSource clock,
            Supplier<UUID> ids) {
        this(kept, keys, hands, work, engine, clock, ids, ChunkSize.USUAL);
    }

    /** The same with chunks of a given size. */
    public Batches(
            KeptBatches kept,
            IdempotencyKeys keys,
            ChunkHands hands,
            Function<UnitSystem, FrameWork> work,
            String engine,
            InstantSource clock,
            Supplier<UUID> ids,
            ChunkSize size) {
        this.kept = kept;
        this.keys = keys;
        this.hands = hands;
        this.work = work;
        this.engine = engine;
        // databases keep microseconds: what is answered now is what is answered later
        this.clock = () -> clock.instant().truncatedTo(ChronoUnit.MICROS);
        this.ids = ids;
        this.reception = new Reception(kept, this.clock, size);
    }

    /**
     * Keeps an upload whole. On any fault nothing of it is kept.
     *
     * @param name what the sender calls it; null for nothing
     * @param settings as JSON; null for none
     * @param body job file; it is read to its end where it is kept or compared, and is not closed
     * @param idempotencyKey null for none
     * @throws RefusedException where nothing can be made of the file, or of the settings
     * @throws IOException where the body broke off
     */
    public Received receive(
            String shop,
            String name,
            UnitSystem units,
            Form form,
            byte[] settings,
            InputStream body,
            String idempotencyKey)
            throws IOException, RefusedException {
        BatchPlan plan =
                new BatchPlan(ids.get(), shop, engine, units.word(), form, clock.instant(), Optional.ofNullable(name));
        Received received = idempotencyKey == null
                ? reception.plain(plan, settings, body)
                : reception.keyed(plan, settings, body, claimed(shop, idempotencyKey));
        if (received instanceof Received.Accepted) {
            hint();
        }
        return received;
    }

    private ClaimedKey claimed(String shop, String key) {
        return new ClaimedKey(keys, clock, new KeyHolder(shop, DOOR, key, ids.get()));
    }

    /** The batch is kept: where nobody can be told now, its chunks are found later. */
    private void hint() {
        try {
            hands.more();
        } catch (UnavailableException e) {
            return;
        }
    }

    /** How far a batch is. */
    public Optional<BatchAnswer> status(String shop, UUID id) {
        return kept.find(shop, id).map(BatchAnswers::of);
    }

    /** Batches, the latest first, after the given one where it is not null. */
    public List<BatchAnswer> list(String shop, int limit, UUID after) {
        return kept.list(shop, limit, after).stream().map(BatchAnswers::of).toList();
    }

    /**
     * Result lines in the order of the file, up to the first chunk that is not done; the trailer says whether that is all.
     *
     * @param units of the answers; null for the batch's own
     * @throws RefusedException 409 where other units than the batch's are asked for, and its engine is another than this
     */
    public Optional<KeptLines> results(String shop, UUID id, Form form, UnitSystem units) throws RefusedException {
        Optional<KeptBatch> found = kept.find(shop, id);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        KeptBatch batch = found.get();
        UnitSystem own = UnitSystem.of(batch.plan().units());
        UnitSystem shown = units == null ? own : units;
        KeptResults results = new KeptResults(kept, batch);
        if (shown == own) {
            return Optional.of(out -> results.lines(sink(out, form, own)));
        }
        if (!batch.plan().engine().equals(engine)) {
            throw new RefusedException(otherEngine(batch.plan()));
        }
        return Optional.of(out -> results.anew(sink(out, form, shown), work.apply(shown)));
    }

    private ProblemReport otherEngine(BatchPlan plan) {
        return ProblemReport.of(
                409,
                "other-engine",
                "The batch was worked on by another engine.",
                "Engine " + plan.engine() + " gave the results in " + plan.units() + " units; this one, " + engine
                        + ", could give others. Ask in the batch's own units.");
    }

    private static ResultSink sink(OutputStream out, Form form, UnitSystem units) throws IOException {
        return form == Form.CSV ? new CsvResults(out, units) : new NdjsonResults(out);
    }

    /** The lines of those that were refused, one JSON object a line, likewise. */
    public Optional<KeptLines> refusals(String shop, UUID id) {
        return kept.find(shop, id).map(batch -> out -> new KeptResults(kept, batch).refusals(new NdjsonResults(out)));
    }

    /** What the frames that are done add up to. */
    public Optional<BatchSummaryAnswer> summary(String shop, UUID id) {
        return kept.find(shop, id).map(batch -> {
            JobTotals totals =
                    kept.totals(shop, id).stream().map(JobTotals::read).reduce(JobTotals.none(), JobTotals::plus);
            return BatchSummaryAnswer.of(
                    BatchAnswers.of(batch), totals, UnitSystem.of(batch.plan().units()));
        });
    }

    /** Cancels a batch that has not ended, and removes one that has. */
    public Removal remove(String shop, UUID id) {
        if (kept.find(shop, id).isEmpty()) {
            return Removal.UNKNOWN;
        }
        if (kept.cancel(shop, id, clock.instant())) {
            return Removal.CANCELLED;
        }
        kept.remove(shop, id);
        return Removal.REMOVED;
    }

    /**
     * Works on a chunk, and keeps what came of it. May be called any number of times, by any number of threads: one result is
     * kept.
     *
     * @throws WorkStoppedException where {@link #stop} was called before all of it was done: nothing of it was kept
     * @return whether nothing is left to be done with it; false where it is another engine's, and is left as it is
     */
    public boolean work(KeptBatches.ChunkName name) {
        Optional<KeptBatch> batch = kept.find(name.shop(), name.batch());
        if (batch.isEmpty() || BatchState.of(batch.get()).isEnded()) {
            return true;
        }
        BatchPlan plan = batch.get().plan();
        if (!plan.engine().equals(engine)) {
            return false;
        }
        kept.chunk(name.batch(), name.number())
                .map(chunk -> ChunkWork.on(chunk, untilStopped(work.apply(UnitSystem.of(plan.units())))))
                .ifPresent(result -> kept.finish(name.batch(), name.number(), result, clock.instant()));
        return true;
    }

    private FrameWork untilStopped(FrameWork each) {
        return group -> {
            if (stopped) {
                throw new WorkStoppedException();
            }
            return each.on(group);
        };
    }

    /** Ends all work on chunks after the frames that are under way, for good: somebody else does those chunks. */
    public void stop() {
        stopped = true;
    }
}
