package org.seamtally.batch;

/**
 * When a chunk is closed: whichever comes first.
 *
 * @param frames at most
 * @param bytes of requests after which no frame is added
 */
public record ChunkSize(int frames, int bytes) {

    /**
     * A hundred frames take a fraction of a second: what a replica that dies gives back is soon done again, and keeping
     * their results costs little beside it. A mebibyte bounds what is held while an upload is read, and as results some tens
     * of mebibytes.
     */
    public static final ChunkSize USUAL = new ChunkSize(100, 1 << 20);

    public ChunkSize {
        if (frames < 1 || bytes < 1) {
            throw new IllegalArgumentException("a chunk has a frame at least");
        }
    }
}
