package org.seamtally.batch;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;

/**
 * Where batches are kept. Every call is one transaction of its own. Everything is asked for with the shop it belongs to:
 * what is another shop's does not exist.
 *
 * <p>Each method throws {@link UnavailableException} where what is kept cannot be reached, and then nothing was changed, or
 * the change is there to be found by asking again.
 */
public interface KeptBatches {

    /** Starts an upload; nothing of it is seen by the other methods until it is sealed. */
    void begin(BatchPlan plan);

    /** Keeps a chunk of an upload. */
    void add(String shop, UUID batch, int chunk, Chunk frames);

    /**
     * Ends an upload: the batch is there from now on, and its chunks are handed out.
     *
     * @param key settled in the same transaction; null where none was sent
     * @throws KeyTakenException where another request settled the key since it was claimed (its claim had run out): nothing
     *     was sealed
     */
    void seal(String shop, UUID batch, Sealed sealed, SettledKey key);

    /** Forgets an upload that broke off, or was refused. */
    void discard(String shop, UUID batch);

    /** Forgets uploads that were begun before then and that nobody has added to since, by the clock of this store. How many. */
    int discardBrokenOff(Instant since);

    /** A sealed batch with what is known of its chunks. */
    Optional<KeptBatch> find(String shop, UUID batch);

    /** Sealed batches, the latest upload first, after the given one where it is not null; none after one that is not there. */
    List<KeptBatch> list(String shop, int limit, UUID after);

    /** A chunk's frames; empty where there is no such chunk of a sealed batch. */
    Optional<Chunk> chunk(UUID batch, int chunk);

    /**
     * Keeps a chunk's results together with its being done.
     *
     * @return false where the chunk had its results already, or the batch is cancelled or gone: these are dropped
     */
    boolean finish(UUID batch, int chunk, ChunkResult result, Instant at);

    /** Results of a chunk. */
    Optional<ChunkResult> result(String shop, UUID batch, int chunk);

    /** Totals of all chunks that are done, in the order of the chunks. */
    List<byte[]> totals(String shop, UUID batch);

    /** Cancels a batch where not all chunks are done; chunks under way are dropped when they end. False where it has ended. */
    boolean cancel(String shop, UUID batch, Instant at);

    /** Removes an ended batch with all that belongs to it. */
    void remove(String shop, UUID batch);

    /** Chunks of sealed, running batches of one engine version that have no results yet, oldest batch first. */
    List<ChunkName> open(String engine, int limit);

    /** A chunk. */
    record ChunkName(String shop, UUID batch, int number) {}

    /**
     * What ends an upload.
     *
     * @param chunks how many
     * @param frames how many
     * @param digest of the body and the settings, SHA-256, hexadecimal
     */
    record Sealed(int chunks, long frames, String digest, Instant at) {}
}
