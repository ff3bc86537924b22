package org.seamtally.batch;

/**
 * What came of a chunk.
 *
 * @param counts of its frames
 * @param lines result lines in the order of the frames, each ended by a line feed, UTF-8, compressed with DEFLATE (RFC 1950)
 * @param refusals the lines of those that were refused, compressed likewise
 * @param totals what the frames add to the summary, as JSON
 */
public record ChunkResult(Counts counts, byte[] lines, byte[] refusals, byte[] totals) {}
