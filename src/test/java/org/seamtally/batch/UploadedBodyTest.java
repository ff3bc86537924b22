package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class UploadedBodyTest {

    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private static UploadedBody body(String text, Form form, String units, String name, String settings) {
        BatchPlan plan = new BatchPlan(new UUID(1, 2), "shop", "engine", units, form, START, Optional.ofNullable(name));
        return new UploadedBody(
                new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
                plan,
                settings == null ? null : settings.getBytes(StandardCharsets.UTF_8));
    }

    private static UploadedBody body(String text) {
        return body(text, Form.NDJSON, "si", null, null);
    }

    @Test
    void whateverMakesAnotherBatchMakesAnotherDigest() throws IOException {
        List<UploadedBody> bodies = List.of(
                body("a frame"),
                body("a frame "),
                body(""),
                body("a frame", Form.CSV, "si", null, null),
                body("a frame", Form.NDJSON, "us", null, null),
                body("a frame", Form.NDJSON, "si", "spring", null),
                body("a frame", Form.NDJSON, "si", "autumn", null),
                body("a frame", Form.NDJSON, "si", null, ""),
                body("a frame", Form.NDJSON, "si", null, "{}"),
                body(" frame", Form.NDJSON, "si", null, "a"),
                body("frame", Form.NDJSON, "si", null, "a "));
        Set<String> digests = bodies.stream()
                .map(each -> {
                    try {
                        return each.digest();
                    } catch (IOException e) {
                        throw new AssertionError(e);
                    }
                })
                .collect(Collectors.toSet());
        assertEquals(bodies.size(), digests.size());
        assertEquals(64, body("a frame").digest().length());
    }

    @Test
    void howItIsReadMakesNoDifference() throws IOException {
        String text = "{\"frame\": \u00e4}\n".repeat(3000);
        UploadedBody whole = body(text);
        UploadedBody bytes = body(text);
        byte[] sent = text.getBytes(StandardCharsets.UTF_8);
        for (byte each : sent) {
            assertEquals(each & 0xff, bytes.read());
        }
        assertEquals(-1, bytes.read());
        assertEquals(whole.digest(), bytes.digest());
    }

    @Test
    void everyReadIsToldOf() throws IOException {
        SettableClock clock = new SettableClock(START);
        AtomicInteger told = new AtomicInteger();
        UploadedBody body = body("abc");
        body.whileRead(new Pulse(clock, Duration.ofSeconds(1), now -> told.incrementAndGet()));
        body.whileRead(new Pulse(clock, Duration.ofSeconds(2), now -> told.addAndGet(10)));
        clock.pass(Duration.ofSeconds(1));
        body.read();
        assertEquals(1, told.get());
        clock.pass(Duration.ofSeconds(1));
        body.read(new byte[2], 0, 2);
        assertEquals(12, told.get());
    }

    @Test
    void nothingIsPassedOver() {
        assertThrows(UnsupportedOperationException.class, () -> body("abc").skip(1));
        assertFalse(body("abc").markSupported());
    }
}
