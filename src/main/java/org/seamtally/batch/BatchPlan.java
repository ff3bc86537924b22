package org.seamtally.batch;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * What a batch is to be.
 *
 * @param shop it belongs to
 * @param engine version of the engine that works on it, with its catalogue: one of another version leaves it
 * @param units word of the units of its answers, {@code si} or {@code us}
 * @param form of the file sent
 * @param at when the upload began
 * @param name what its sender calls it
 */
public record BatchPlan(
        UUID id, String shop, String engine, String units, Form form, Instant at, Optional<String> name) {

    /** Longest name, characters: longer than any file's. */
    public static final int LONGEST_NAME = 200;
}
