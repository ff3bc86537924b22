package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts come out as they were put in, however the body arrives. */
class MultipartTest {

    private static final String BOUNDARY = "a-boundary--of-dashes";

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    private static String part(String name, String content) {
        return "--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n"
                + "Content-Type: text/csv\r\n\r\n" + content + "\r\n";
    }

    private static Multipart of(String body) {
        return new Multipart(new ByteArrayInputStream(ascii(body)), BOUNDARY);
    }

    /** A stream that hands over a few bytes at a time. */
    private static InputStream inBits(byte[] body, Random random) {
        return new ByteArrayInputStream(body) {
            @Override
            public synchronized int read(byte[] into, int offset, int length) {
                return super.read(into, offset, Math.min(length, 1 + random.nextInt(random.nextBoolean() ? 3 : 5000)));
            }
        };
    }

    /** Content that is full of what looks like a boundary and is none. */
    private static byte[] treacherous(Random random) {
        ByteArrayOutputStream content = new ByteArrayOutputStream();
        String almost = "\r\n--" + BOUNDARY;
        int pieces = random.nextInt(200);
        for (int i = 0; i < pieces; i++) {
            switch (random.nextInt(4)) {
                case 0 -> content.writeBytes(ascii(almost.substring(0, random.nextInt(almost.length()))));
                case 1 -> content.writeBytes(ascii("\r\n"));
                case 2 -> content.writeBytes(ascii("\r"));
                default -> {
                    byte[] noise = new byte[random.nextInt(300)];
                    random.nextBytes(noise);
                    content.writeBytes(noise);
                }
            }
            // what follows a piece is never what would complete a boundary
            content.write('#');
        }
        return content.toByteArray();
    }

    @Test
    void anyContentComesOutWholeHoweverItArrives() throws IOException {
        for (int seed = 0; seed < 500; seed++) {
            Random random = new Random(seed);
            byte[] first = treacherous(random);
            byte[] second = treacherous(random);
            ByteArrayOutputStream body = new ByteArrayOutputStream();
            body.writeBytes(ascii(part("settings", "")));
            body.reset();
            for (byte[] content : new byte[][] {first, second}) {
                body.writeBytes(ascii("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"x\"\r\n\r\n"));
                body.writeBytes(content);
                body.writeBytes(ascii("\r\n"));
            }
            body.writeBytes(ascii("--" + BOUNDARY + "--\r\n"));
            Multipart parts = new Multipart(inBits(body.toByteArray(), random), BOUNDARY);
            parts.next();
            assertArrayEquals(first, parts.content().readAllBytes(), "seed " + seed);
            parts.next();
            assertArrayEquals(second, parts.lastContent().readAllBytes(), "seed " + seed);
            assertNull(parts.next(), "seed " + seed);
        }
    }

    @Test
    void aPartTellsWhatStandsInFrontOfIt() throws IOException {
        Multipart parts = of("a preamble\r\n" + part("jobs", "x") + "--" + BOUNDARY + "--\r\nan epilogue");
        Multipart.Part part = parts.next();
        assertEquals("form-data; name=\"jobs\"", part.disposition());
        assertEquals("text/csv", part.type());
        assertNull(part.encoding());
        assertEquals("x", new String(parts.content().readAllBytes(), StandardCharsets.US_ASCII));
        assertNull(parts.next());
    }

    @Test
    void aPartThatIsLeftIsPassedOver() throws IOException {
        Multipart parts = of(part("settings", "y".repeat(50_000)) + part("jobs", "x") + "--" + BOUNDARY + "--");
        parts.next();
        parts.next();
        assertEquals("x", new String(parts.lastContent().readAllBytes(), StandardCharsets.US_ASCII));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "no boundary at all",
                "--a-boundary--of-dashes\r\nContent-Disposition: form-data; name=\"jobs\"\r\n\r\nx",
                "--a-boundary--of-dashes\r\nContent-Disposition: form-data; name=\"jobs\"\r\n\r\nx\r\n--a-boundary",
                "--a-boundary--of-dashes\r\nno colon\r\n\r\nx\r\n--a-boundary--of-dashes--\r\n"
            })
    void whatIsNoSuchBodyOrBreaksOffIsToldSo(String body) {
        Multipart parts = of(body);
        assertThrows(Multipart.MalformedException.class, () -> {
            while (parts.next() != null) {
                parts.content().readAllBytes();
            }
        });
    }

    @Test
    void aPartAfterTheLastIsToldBeforeTheLastOneEnds() throws IOException {
        Multipart parts = of(part("jobs", "x") + part("more", "y") + "--" + BOUNDARY + "--\r\n");
        parts.next();
        InputStream content = parts.lastContent();
        assertThrows(Multipart.MalformedException.class, content::readAllBytes);
    }

    @Test
    void aHeadWithoutEndIsNotGathered() {
        // far more than there is memory for: whoever gathers it never gets to the assertion
        InputStream endless = new InputStream() {
            private final byte[] begin = ascii("--" + BOUNDARY + "\r\nX-Name: ");
            private int at;

            @Override
            public int read() {
                return at < begin.length ? begin[at++] : 'x';
            }
        };
        assertThrows(Multipart.MalformedException.class, () -> new Multipart(endless, BOUNDARY).next());
        InputStream endlessPreamble = new InputStream() {
            @Override
            public int read() {
                return 'x';
            }
        };
        assertThrows(Multipart.MalformedException.class, () -> new Multipart(endlessPreamble, BOUNDARY).next());
    }
}
