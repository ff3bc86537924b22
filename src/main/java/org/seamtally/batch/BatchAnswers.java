package org.seamtally.batch;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.time.Instant;
import java.util.Locale;
import java.util.OptionalDouble;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Display;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.BatchAnswer;
import org.seamtally.wire.Json;
import org.seamtally.wire.Quantity;

/** What is answered about kept batches. */
final class BatchAnswers {

    private BatchAnswers() {}

    static BatchAnswer of(KeptBatch batch) {
        BatchPlan plan = batch.plan();
        Counts counts = batch.counts();
        BatchPace pace = BatchPace.of(batch);
        Display left = pace.secondsLeft().isPresent()
                ? Dimension.TIME.show(pace.secondsLeft().getAsDouble(), UnitSystem.of(plan.units()))
                : null;
        return new BatchAnswer(
                plan.id().toString(),
                plan.name().orElse(null),
                BatchState.of(batch).word(),
                plan.engine(),
                plan.units(),
                plan.form().name().toLowerCase(Locale.ROOT),
                plan.at().toString(),
                batch.cancelled().map(Instant::toString).orElse(null),
                batch.lastDone().map(Instant::toString).orElse(null),
                new BatchAnswer.Frames(batch.sealed().frames(), counts.read(), counts.done(), counts.refused()),
                new BatchAnswer.Chunks(batch.sealed().chunks(), batch.chunksDone()),
                rounded(pace.framesPerSecond()),
                left == null ? null : new Quantity(left.value(), left.unit()));
    }

    private static Double rounded(OptionalDouble pace) {
        return pace.isPresent()
                ? (Double)
                        Dimension.COUNT.show(pace.getAsDouble(), UnitSystem.SI).value()
                : null;
    }

    static byte[] json(KeptBatch batch) {
        try {
            return Json.mapper().writeValueAsBytes(of(batch));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an answer can always be written", e);
        }
    }
}
