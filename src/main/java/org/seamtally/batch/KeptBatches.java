package org.seamtally.batch;

import java.time.Duration;
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

    /** Says that an upload goes on, though nothing was to be kept of it for a while; nothing where it was given up. */
    void touch(String shop, UUID batch);

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

    /**
     * Forgets uploads that were begun before then and that nobody has added to or touched since, by the clock of this store,
     * and what is left of removals that a fault broke off. How many.
     */
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

    /** Result lines of a chunk. */
    Optional<ChunkLines> lines(String shop, UUID batch, int chunk);

    /** Those of a chunk's result lines that are refusals. */
    Optional<ChunkLines> refusals(String shop, UUID batch, int chunk);

    /** Counts of a chunk that has its results. */
    Optional<Counts> counts(String shop, UUID batch, int chunk);

    /** Totals of all chunks that are done, in the order of the chunks. */
    List<byte[]> totals(String shop, UUID batch);

    /** Cancels a batch where not all chunks are done; chunks under way are dropped when they end. False where it has ended. */
    boolean cancel(String shop, UUID batch, Instant at);

    /** Removes an ended batch with all that belongs to it: nobody sees it from the call on. */
    void remove(String shop, UUID batch);

    /** Removes, whosever they are, batches that ended before then. How many. */
    int removeEnded(Instant before);

    /**
     * How long nothing may be heard of an upload until it is given up. A sender who sends nothing is cut off by the server
     * after a minute; while bytes arrive, however slowly a chunk fills, whoever reads them touches the upload every
     * {@link #TOUCHED_EVERY}. So a live upload is never silent for more than two minutes and the time that it takes to keep
     * a chunk, and the rest is for a database that was away.
     */
    Duration BROKEN_OFF = Duration.ofMinutes(15);

    /** See {@link #BROKEN_OFF}. */
    Duration TOUCHED_EVERY = Duration.ofMinutes(1);

    /** A chunk. */
    record ChunkName(String shop, UUID batch, int number) {}

    /**
     * Lines of a chunk that has its results.
     *
     * @param counts of all its frames
     * @param lines each ended by a line feed, UTF-8, compressed with DEFLATE (RFC 1950)
     */
    record ChunkLines(Counts counts, byte[] lines) {}

    /**
     * What ends an upload.
     *
     * @param chunks how many
     * @param frames how many
     * @param digest of the body and the settings, SHA-256, hexadecimal
     */
    record Sealed(int chunks, long frames, String digest, Instant at) {}
}
