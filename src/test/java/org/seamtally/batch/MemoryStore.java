package org.seamtally.batch;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;

/** Batches and keys kept in memory: what the contract says and nothing else. Every call is atomic. */
public final class MemoryStore implements KeptBatches, IdempotencyKeys {

    private static final Comparator<Upload> OLDEST_FIRST =
            Comparator.<Upload, Instant>comparing(upload -> upload.plan.at()).thenComparing(upload -> upload.plan.id());

    private final InstantSource clock;
    private final Map<UUID, Upload> uploads = new HashMap<>();
    private final Map<Key, Use> keys = new HashMap<>();

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

        KeptBatch kept() {
            return new KeptBatch(
                    plan,
                    sealed,
                    Optional.ofNullable(cancelled),
                    results.size(),
                    results.values().stream().map(ChunkResult::counts).reduce(Counts.NONE, Counts::plus),
                    Optional.ofNullable(firstDone),
                    Optional.ofNullable(lastDone));
        }
    }

    private record Key(String shop, String door, String key) {}

    private record Use(Instant claimed, SettledKey settled) {}

    @Override
    public synchronized void begin(BatchPlan plan) {
        uploads.put(plan.id(), new Upload(plan, clock.instant()));
    }

    @Override
    public synchronized void add(String shop, UUID batch, int chunk, Chunk frames) {
        Upload upload = uploads.get(batch);
        upload.chunks.put(chunk, frames);
        upload.touched = clock.instant();
    }

    @Override
    public synchronized void seal(String shop, UUID batch, Sealed sealed, SettledKey key) {
        settle(key, sealed.at());
        uploads.get(batch).sealed = sealed;
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
        keys.put(name, new Use(at, key));
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
        return sealed(shop, batch).map(Upload::kept);
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
        return all.stream().limit(limit).map(Upload::kept).toList();
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

    @Override
    public synchronized Optional<ChunkResult> result(String shop, UUID batch, int chunk) {
        return sealed(shop, batch).map(upload -> upload.results.get(chunk));
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
    public synchronized List<ChunkName> open(String engine, int limit) {
        return uploads.values().stream()
                .filter(upload -> upload.running() && upload.plan.engine().equals(engine))
                .sorted(OLDEST_FIRST)
                .flatMap(upload -> upload.chunks.keySet().stream()
                        .filter(chunk -> !upload.results.containsKey(chunk))
                        .map(chunk -> new ChunkName(upload.plan.shop(), upload.plan.id(), chunk)))
                .limit(limit)
                .toList();
    }

    @Override
    public synchronized Claim claim(String shop, String door, String key, Instant now) {
        Key name = new Key(shop, door, key);
        Use use = keys.get(name);
        if (use != null && use.settled != null) {
            return new Claim.Settled(use.settled);
        }
        if (use != null && use.claimed.plusSeconds(LEASE_SECONDS).isAfter(now)) {
            return new Claim.InFlight();
        }
        keys.put(name, new Use(now, null));
        return new Claim.Granted();
    }

    @Override
    public synchronized void renew(String shop, String door, String key, Instant now) {
        keys.computeIfPresent(new Key(shop, door, key), (name, use) -> use.settled == null ? new Use(now, null) : use);
    }

    @Override
    public synchronized void release(String shop, String door, String key) {
        keys.computeIfPresent(new Key(shop, door, key), (name, use) -> use.settled == null ? null : use);
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
