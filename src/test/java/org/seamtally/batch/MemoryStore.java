package org.seamtally.batch;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;

/** Batches and keys kept in memory: what the contract says and nothing else. Every call is atomic. */
public final class MemoryStore implements KeptBatches, IdempotencyKeys {

    private static final Comparator<Upload> OLDEST_FIRST =
            Comparator.<Upload, Instant>comparing(upload -> upload.plan.at()).thenComparing(upload -> upload.plan.id());

    private final InstantSource clock;
    private final Map<UUID, Upload> uploads = new HashMap<>();
    private final Map<Key, Use> keys = new HashMap<>();
    private final Set<String> enginesGone = new HashSet<>();

    public MemoryStore(InstantSource clock) {
        this.clock = clock;
    }

    private static final class Upload {
        final BatchPlan plan;
        final TreeMap<Integer, Chunk> chunks = new TreeMap<>();
        final TreeMap<Integer, ChunkResult> results = new TreeMap<>();
        Instant touched;
        Sealed sealed;
        Instant cancelled;
        Instant firstDone;
        Instant lastDone;

        Upload(BatchPlan plan, Instant touched) {
            this.plan = plan;
            this.touched = touched;
        }

        boolean running() {
            return sealed != null && cancelled == null && results.size() < sealed.chunks();
        }

        KeptBatch kept(boolean engineAtWork) {
            return new KeptBatch(
                    plan,
                    engineAtWork,
                    sealed,
                    Optional.ofNullable(cancelled),
                    results.size(),
                    results.values().stream().map(ChunkResult::counts).reduce(Counts.NONE, Counts::plus),
                    Optional.ofNullable(firstDone),
                    Optional.ofNullable(lastDone));
        }
    }

    private record Key(String shop, String door, String key) {}

    private record Use(UUID claimant, Instant claimed, SettledKey settled) {

        boolean isClaimOf(KeyHolder holder) {
            return settled == null && claimant.equals(holder.claimant());
        }
    }

    private static Key name(KeyHolder holder) {
        return new Key(holder.shop(), holder.door(), holder.key());
    }

    private KeptBatch kept(Upload upload) {
        return upload.kept(!enginesGone.contains(upload.plan.engine()));
    }

    /** No service with that version of the engine runs any more. */
    public synchronized void engineGone(String engine) {
        enginesGone.add(engine);
    }

    @Override
    public synchronized void begin(BatchPlan plan) {
        uploads.put(plan.id(), new Upload(plan, clock.instant()));
    }

    @Override
    public synchronized void add(String shop, UUID batch, int chunk, Chunk frames) {
        Upload upload = upload(batch);
        upload.chunks.put(chunk, frames);
        upload.touched = clock.instant();
    }

    private Upload upload(UUID batch) {
        Upload upload = uploads.get(batch);
        if (upload == null) {
            throw new UnavailableException("the upload was given up", null);
        }
        return upload;
    }

    @Override
    public synchronized void touch(String shop, UUID batch) {
        Upload upload = uploads.get(batch);
        if (upload != null && upload.sealed == null && upload.plan.shop().equals(shop)) {
            upload.touched = clock.instant();
        }
    }

    @Override
    public synchronized void seal(String shop, UUID batch, Sealed sealed, SettledKey key) {
        Upload upload = upload(batch);
        settle(key, sealed.at());
        upload.sealed = sealed;
    }

    /** Settles a key where there is one, together with whatever is kept after it. */
    public synchronized void settle(SettledKey key, Instant at) {
        if (key == null) {
            return;
        }
        Key name = new Key(key.shop(), key.door(), key.key());
        Use use = keys.get(name);
        if (use != null && use.settled != null) {
            throw new KeyTakenException(key.key());
        }
        keys.put(name, new Use(null, at, key));
    }

    @Override
    public synchronized void discard(String shop, UUID batch) {
        Upload upload = uploads.get(batch);
        if (upload != null && upload.sealed == null) {
            uploads.remove(batch);
        }
    }

    @Override
    public synchronized int discardBrokenOff(Instant since) {
        int before = uploads.size();
        uploads.values().removeIf(upload -> upload.sealed == null && upload.touched.isBefore(since));
        return before - uploads.size();
    }

    private Optional<Upload> sealed(String shop, UUID batch) {
        return Optional.ofNullable(uploads.get(batch))
                .filter(upload -> upload.sealed != null && upload.plan.shop().equals(shop));
    }

    @Override
    public synchronized Optional<KeptBatch> find(String shop, UUID batch) {
        return sealed(shop, batch).map(this::kept);
    }

    @Override
    public synchronized List<KeptBatch> list(String shop, int limit, UUID after) {
        List<Upload> all = new ArrayList<>(uploads.values());
        all.removeIf(upload -> upload.sealed == null || !upload.plan.shop().equals(shop));
        all.sort(OLDEST_FIRST.reversed());
        if (after != null) {
            List<UUID> ids = all.stream().map(upload -> upload.plan.id()).toList();
            int at = ids.indexOf(after);
            all = at < 0 ? List.of() : all.subList(at + 1, all.size());
        }
        return all.stream().limit(limit).map(this::kept).toList();
    }

    @Override
    public synchronized Optional<Chunk> chunk(UUID batch, int chunk) {
        return Optional.ofNullable(uploads.get(batch))
                .filter(upload -> upload.sealed != null)
                .map(upload -> upload.chunks.get(chunk));
    }

    @Override
    public synchronized boolean finish(UUID batch, int chunk, ChunkResult result, Instant at) {
        Upload upload = uploads.get(batch);
        if (upload == null || !upload.running() || upload.results.putIfAbsent(chunk, result) != null) {
            return false;
        }
        upload.firstDone = upload.firstDone == null ? at : upload.firstDone;
        upload.lastDone = at;
        return true;
    }

    private Optional<ChunkResult> result(String shop, UUID batch, int chunk) {
        return sealed(shop, batch).map(upload -> upload.results.get(chunk));
    }

    @Override
    public synchronized Optional<ChunkLines> lines(String shop, UUID batch, int chunk) {
        return result(shop, batch, chunk).map(result -> new ChunkLines(result.counts(), result.lines()));
    }

    @Override
    public synchronized Optional<ChunkLines> refusals(String shop, UUID batch, int chunk) {
        return result(shop, batch, chunk).map(result -> new ChunkLines(result.counts(), result.refusals()));
    }

    @Override
    public synchronized Optional<Counts> counts(String shop, UUID batch, int chunk) {
        return result(shop, batch, chunk).map(ChunkResult::counts);
    }

    @Override
    public synchronized List<byte[]> totals(String shop, UUID batch) {
        return sealed(shop, batch).stream()
                .flatMap(upload -> upload.results.values().stream())
                .map(ChunkResult::totals)
                .toList();
    }

    @Override
    public synchronized boolean cancel(String shop, UUID batch, Instant at) {
        Optional<Upload> upload = sealed(shop, batch).filter(Upload::running);
        upload.ifPresent(running -> running.cancelled = at);
        return upload.isPresent();
    }

    @Override
    public synchronized void remove(String shop, UUID batch) {
        sealed(shop, batch).filter(upload -> !upload.running()).ifPresent(upload -> uploads.remove(batch));
    }

    @Override
    public synchronized int removeEnded(Instant before) {
        int there = uploads.size();
        uploads.values()
                .removeIf(upload -> upload.sealed != null
                        && !upload.running()
                        && (upload.cancelled == null ? upload.lastDone : upload.cancelled).isBefore(before));
        return there - uploads.size();
    }

    /** Chunks without results of running batches of one engine version, the oldest batch's first. */
    public synchronized List<ChunkName> open(String engine) {
        return uploads.values().stream()
                .filter(upload -> upload.running() && upload.plan.engine().equals(engine))
                .sorted(OLDEST_FIRST)
                .flatMap(upload -> upload.chunks.keySet().stream()
                        .filter(chunk -> !upload.results.containsKey(chunk))
                        .map(chunk -> new ChunkName(upload.plan.shop(), upload.plan.id(), chunk)))
                .toList();
    }

    @Override
    public synchronized Claim claim(KeyHolder holder, Instant now) {
        Use use = keys.get(name(holder));
        if (use != null && use.settled != null) {
            return new Claim.Settled(use.settled);
        }
        if (use != null && use.claimed.plusSeconds(LEASE_SECONDS).isAfter(now)) {
            return new Claim.InFlight();
        }
        keys.put(name(holder), new Use(holder.claimant(), now, null));
        return new Claim.Granted();
    }

    @Override
    public synchronized void renew(KeyHolder holder, Instant now) {
        keys.computeIfPresent(
                name(holder), (name, use) -> use.isClaimOf(holder) ? new Use(holder.claimant(), now, null) : use);
    }

    @Override
    public synchronized void release(KeyHolder holder) {
        keys.computeIfPresent(name(holder), (name, use) -> use.isClaimOf(holder) ? null : use);
    }

    @Override
    public synchronized int forget(Instant before) {
        int there = keys.size();
        keys.values().removeIf(use -> use.claimed.isBefore(before));
        return there - keys.size();
    }

    /** Uploads that are kept, sealed or not. */
    public synchronized int uploads() {
        return uploads.size();
    }

    /** Keys that are claimed or settled. */
    public synchronized int keys() {
        return keys.size();
    }
}
