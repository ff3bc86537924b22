package org.seamtally.batch;

/**
 * Frames of a job file that are worked on together.
 *
 * @param frames how many
 * @param bytes the frames, compressed
 */
public record Chunk(int frames, byte[] bytes) {}
