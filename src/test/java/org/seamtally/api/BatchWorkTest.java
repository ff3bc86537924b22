package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Batches;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatch;
import org.seamtally.batch.KeptBatches;
import org.seamtally.batch.Received;
import org.seamtally.kept.UnavailableException;
import org.seamtally.quantity.UnitSystem;

/** The parts of kept batches as the running service puts them together. */
@QuarkusTest
class BatchWorkTest {

    private static final String FRAME = "{\"frame\": {\"name\": \"gate\", \"joints\": [{\"kind\": \"plug\","
            + " \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}]}}\n";

    @Inject
    Batches batches;

    @Inject
    KeptBatches kept;

    @Test
    void whatIsReceivedIsWorkedOnToItsEnd() throws Exception {
        UUID id = assertInstanceOf(Received.Accepted.class, receive()).id();
        Instant limit = Instant.now().plus(Duration.ofSeconds(60));
        while (kept.find("local", id).orElseThrow().chunksDone() == 0
                && Instant.now().isBefore(limit)) {
            Thread.sleep(20);
        }
        KeptBatch batch = kept.find("local", id).orElseThrow();
        assertEquals(new Counts(3, 2, 1), batch.counts());
        assertEquals(
                new BatchPlan(
                        id,
                        "local",
                        batch.plan().engine(),
                        "si",
                        Form.NDJSON,
                        batch.plan().at(),
                        Optional.of("three")),
                batch.plan());
    }

    /** Just started, the service may not have made its tables yet. */
    private Received receive() throws Exception {
        Instant limit = Instant.now().plus(Duration.ofSeconds(60));
        while (true) {
            try {
                byte[] body = (FRAME + "not a frame\n" + FRAME).getBytes(StandardCharsets.UTF_8);
                return batches.receive(
                        "local", "three", UnitSystem.SI, Form.NDJSON, null, new ByteArrayInputStream(body), null);
            } catch (UnavailableException e) {
                if (Instant.now().isAfter(limit)) {
                    throw new IOException("nothing is kept within a minute", e);
                }
                Thread.sleep(20);
            }
        }
    }
}
