package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

/** A line has so much time to arrive, and the body as much as it has lines. */
class StreamBodyTest {

    private final AtomicReference<Instant> now = new AtomicReference<>(Instant.EPOCH);
    private final InstantSource clock = now::get;

    /** A sender who takes a time over each byte. */
    private InputStream slow(String text, Duration each) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.US_ASCII)) {
            @Override
            public synchronized int read(byte[] into, int offset, int length) {
                now.updateAndGet(instant -> instant.plus(each));
                return super.read(into, offset, 1);
            }
        };
    }

    @Test
    void aSenderMayTakeAsLongAsHeLikesAsLongAsLinesCome() throws IOException {
        StreamBody body = new StreamBody(slow("ab\n".repeat(1000), Duration.ofSeconds(30)), clock);
        assertEquals(3000, body.readAllBytes().length);
        assertTrue(body.ended());
    }

    @Test
    void aLineThatDoesNotComeToItsEndIsGivenUp() {
        StreamBody body = new StreamBody(slow("x".repeat(1000), Duration.ofSeconds(30)), clock);
        assertThrows(StreamBody.TooSlowException.class, body::readAllBytes);
        assertEquals(Instant.EPOCH.plusSeconds(150), now.get(), "two minutes and not a byte longer");
        assertFalse(body.ended());
    }

    @Test
    void whatTheServiceTakesItselfDoesNotCount() throws IOException {
        StreamBody body = new StreamBody(slow("xyz", Duration.ofSeconds(1)), clock);
        for (int i = 0; i < 3; i++) {
            body.read();
            now.updateAndGet(instant -> instant.plus(Duration.ofHours(1)));
        }
        assertEquals(-1, body.read());
    }

    @Test
    void whatWasAnsweredGoesOutBeforeEachWait() throws IOException {
        AtomicInteger flushed = new AtomicInteger();
        StreamBody body = new StreamBody(slow("abc", Duration.ZERO), clock);
        body.read();
        assertEquals(0, flushed.get());
        body.answeringOn(flushed::incrementAndGet);
        body.read();
        body.read();
        assertEquals(2, flushed.get());
        assertEquals(0, body.available(), "nobody is to wait for more before he hands on what he has");
    }

    @Test
    void aSenderWhoIsGoneIsToldApartFromAReaderWhoIsGone() {
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("reset");
            }

            @Override
            public int read(byte[] into, int offset, int length) throws IOException {
                return read();
            }
        };
        assertThrows(StreamBody.BrokenOffException.class, () -> new StreamBody(broken, clock).read());
    }

    @Test
    void noBodyIsAnEmptyOne() throws IOException {
        assertEquals(-1, new StreamBody(null, clock).read());
    }
}
