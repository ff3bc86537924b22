package org.seamtally.batch;

import java.time.Instant;
import java.util.UUID;

/**
 * What a batch is to be.
 *
 * @param shop it belongs to
 * @param engine version of the engine that works on it, with its catalogue: one of another version leaves it
 * @param units word of the units of its answers, {@code si} or {@code us}
 * @param form of the file sent
 * @param at when the upload began
 */
public record BatchPlan(UUID id, String shop, String engine, String units, Form form, Instant at) {}
