package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.RefusedException;
import org.seamtally.wire.Violation;

class NdjsonFramesTest {

    private static final Engine ENGINE = new Engine("test");

    private static final String PLUG =
            "{\"frame\": {\"joints\": [{\"kind\": \"plug\", \"holeDiameter\": \"10 mm\", \"depth\": \"3 mm\"}]}}";

    static List<JobFrame> read(byte[] file, byte[] settings) throws IOException, RefusedException {
        JobFrames frames = JobFiles.open(new ByteArrayInputStream(file), Form.NDJSON, settings);
        List<JobFrame> all = new ArrayList<>();
        for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
            all.add(frame);
        }
        return all;
    }

    static List<JobFrame> read(String file) throws IOException, RefusedException {
        return read(file.getBytes(StandardCharsets.UTF_8), null);
    }

    static String key(JobFrame frame) {
        assertEquals(1, frame.problem().violations().size(), frame.problem().toString());
        return frame.problem().violations().get(0).key();
    }

    static String refusal(byte[] file) {
        RefusedException refused = assertThrows(RefusedException.class, () -> read(file, null));
        assertEquals(422, refused.problem().status());
        return refused.problem().violations().get(0).key();
    }

    private static byte[] bytes(int... values) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        Arrays.stream(values).forEach(all::write);
        return all.toByteArray();
    }

    @Test
    void framesStandInTheirLines() throws Exception {
        List<JobFrame> frames = read("\uFEFF" + PLUG + "\n\r\n  \n" + PLUG + "\r\n" + PLUG);
        assertEquals(List.of(1L, 4L, 5L), frames.stream().map(JobFrame::line).toList());
        for (JobFrame frame : frames) {
            assertEquals(PLUG, new String(frame.request(), StandardCharsets.UTF_8));
            assertNull(frame.places());
            assertFalse(ENGINE.jobLine(frame, UnitSystem.SI).refused());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "\r\n \n\t\n", "\uFEFF", "\uFEFF\n"})
    void aFileWithoutAFrameIsRefused(String file) {
        assertEquals(Violation.Key.EMPTY, refusal(file.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void filesOfAnotherSortAreRefusedWhole() {
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal(("\uFEFF" + PLUG).getBytes(StandardCharsets.UTF_16LE)));
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal(("\uFEFF" + PLUG).getBytes(StandardCharsets.UTF_16BE)));
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal(PLUG.getBytes(StandardCharsets.UTF_16LE)));
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal(bytes(0x1f, 0x8b, 8, 0)));
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal(bytes('P', 'K', 3, 4, 20, 0)));
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal(bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1)));
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal(bytes(0, 1, 2, 3)));
    }

    @Test
    void aLineThatIsNotUtf8IsItsOwnProblem() throws Exception {
        byte[] latin =
                (PLUG + "\n{\"frame\": {\"name\": \"Tr\u00e4ger\"}}\n" + PLUG).getBytes(StandardCharsets.ISO_8859_1);
        List<JobFrame> frames = read(latin, null);
        assertEquals(3, frames.size());
        assertEquals(Violation.Key.NOT_UTF_8, key(frames.get(1)));
        assertEquals(2, frames.get(1).line());
        assertEquals(Violation.Key.NOT_UTF_8, key(read(PLUG + "\n\0{\0}\n").get(1)));
        assertNull(read("{\"frame\": {\"name\": \"Tr\u00e4ger\"}}").get(0).problem());
    }

    @Test
    void aBareCarriageReturnNamesLineEnds() throws Exception {
        List<JobFrame> frames = read(PLUG + "\r" + PLUG + "\n" + PLUG);
        assertEquals(Violation.Key.LINE_ENDS, key(frames.get(0)));
        assertNull(frames.get(1).problem());
        assertEquals(2, frames.get(1).line());
    }

    @Test
    void halfALineIsItsOwnProblem() throws Exception {
        List<JobFrame> frames = read(PLUG + "\n" + PLUG.substring(0, 40));
        JobLine line = ENGINE.jobLine(frames.get(1), UnitSystem.SI);
        assertTrue(line.refused());
        JsonNode json = Json.mapper().readTree(line.json());
        assertEquals(2, json.get("line").asLong());
        assertEquals(
                Violation.Key.NOT_JSON, json.at("/problem/violations/0/key").asText());
    }

    @Test
    void aLineAsLongAsItMayBeIsReadAndALongerOneIsSkipped() throws Exception {
        String just = PLUG + " ".repeat(JobFiles.LONGEST_LINE - PLUG.length());
        List<JobFrame> frames = read(just + "\r\n" + just + " \n" + PLUG + "\n" + just + "\n" + just + " \r\n" + PLUG);
        assertEquals(
                List.of(1L, 2L, 3L, 4L, 5L, 6L),
                frames.stream().map(JobFrame::line).toList());
        assertNull(frames.get(0).problem());
        assertEquals(Violation.Key.TOO_LONG, key(frames.get(1)));
        assertNull(frames.get(2).problem());
        assertNull(frames.get(3).problem());
        assertEquals(Violation.Key.TOO_LONG, key(frames.get(4)));
        assertNull(frames.get(5).problem());
    }

    @Test
    void aHugeLineIsNotHeld() throws Exception {
        long length = 300L << 20;
        InputStream huge = new Repeated('x', length);
        InputStream file = new java.io.SequenceInputStream(
                huge, new ByteArrayInputStream(("\n" + PLUG).getBytes(StandardCharsets.UTF_8)));
        JobFrames frames = JobFiles.open(file, Form.NDJSON, null);
        assertEquals(Violation.Key.TOO_LONG, key(frames.next()));
        JobFrame next = frames.next();
        assertEquals(2, next.line());
        assertNull(next.problem());
        assertNull(frames.next());
    }

    /** One byte over and over. */
    static final class Repeated extends InputStream {

        private final int value;
        private long left;

        Repeated(int value, long length) {
            this.value = value;
            this.left = length;
        }

        @Override
        public int read() {
            return left-- > 0 ? value : -1;
        }

        @Override
        public int read(byte[] to, int start, int count) {
            if (left <= 0) {
                return -1;
            }
            int got = (int) Math.min(left, count);
            Arrays.fill(to, start, start + got, (byte) value);
            left -= got;
            return got;
        }
    }

    @Test
    void aLineTakesFromTheSettingsTheWholePartsThatItLeavesOut() throws Exception {
        String settings = "{\"gas\": {\"flow\": \"9 L/min\", \"leak\": \"0.10 L/min\"}, \"arc\": null,"
                + " \"labour\": {\"operatingFactor\": 0.30}}";
        String own = "{\"gas\": {\"flow\": \"7 L/min\"}, " + PLUG.substring(1);
        List<JobFrame> frames = read(
                (PLUG + "\n" + own + " \n{}\n[1]\n{\"frame\"").getBytes(StandardCharsets.UTF_8),
                settings.getBytes(StandardCharsets.UTF_8));
        JsonNode first = Json.mapper().readTree(frames.get(0).request());
        assertEquals("9 L/min", first.at("/gas/flow").asText());
        assertFalse(first.has("arc"));
        assertTrue(new String(frames.get(0).request(), StandardCharsets.UTF_8).contains("0.30"));
        JsonNode second = Json.mapper().readTree(frames.get(1).request());
        assertEquals("7 L/min", second.at("/gas/flow").asText());
        assertTrue(second.at("/gas/leak").isMissingNode());
        assertEquals(0.3, second.at("/labour/operatingFactor").asDouble());
        assertEquals(2, Json.mapper().readTree(frames.get(2).request()).size());
        assertEquals("[1]", new String(frames.get(3).request(), StandardCharsets.UTF_8));
        assertEquals("{\"frame\"", new String(frames.get(4).request(), StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @ValueSource(strings = {"{\"frame\": {}}", "{\"gas\": {\"flow\": \"9\"}}", "[]", "", "null", "{\"gas\": 5}"})
    void badSettingsAreRefusedBeforeTheFirstFrame(String settings) {
        assertThrows(
                RefusedException.class,
                () -> read(PLUG.getBytes(StandardCharsets.UTF_8), settings.getBytes(StandardCharsets.UTF_8)));
    }

    static List<Path> samples() throws IOException {
        List<Path> frames = new ArrayList<>();
        try (var files = Files.list(Path.of("sample-jobs"))) {
            for (Path file : files.sorted().toList()) {
                if (file.toString().endsWith(".json")
                        && Json.mapper().readTree(file.toFile()).has("frame")) {
                    frames.add(file);
                }
            }
        }
        assertTrue(frames.size() >= 6, "sample frames are found");
        return frames;
    }

    @Test
    void aLineIsTheEstimateOfTheSameFrameByItself() throws Exception {
        for (Path sample : samples()) {
            for (UnitSystem units : UnitSystem.values()) {
                JsonNode request = Json.mapper().readTree(sample.toFile());
                JobFrame frame =
                        read(Files.readString(sample).replaceAll("\\R", " ")).get(0);
                JobLine line = ENGINE.jobLine(frame, units);
                Outcome<FrameEstimateAnswer> single =
                        ENGINE.frameEstimate(new ByteArrayInputStream(Files.readAllBytes(sample)), units);
                FrameEstimateAnswer answer = ((Outcome.Answered<FrameEstimateAnswer>) single).answer();
                String estimate = Json.mapper().writeValueAsString(answer);
                assertEquals(
                        "{\"line\":1,\"estimate\":" + estimate + "}", new String(line.json(), StandardCharsets.UTF_8));
                assertEquals(
                        BigDecimal.valueOf(
                                answer.forQuantity().filler().consumed().value()),
                        line.totals().get().amounts().get("forQuantity.filler.consumed"));
                assertEquals(
                        answer.forQuantity().gas().startSurge().unit(),
                        line.totals().get().units().get("forQuantity.gas.startSurge"));
                assertEquals(request.has("prices"), !line.totals().get().money().isEmpty(), sample.toString());
                if (request.has("prices")) {
                    assertEquals(
                            new BigDecimal(answer.cost().total()),
                            line.totals().get().money().get(answer.cost().currency()));
                    assertEquals(
                            answer.name(), line.totals().get().dearest().get(0).name());
                }
            }
        }
    }

    @Test
    void aFrameThatTakesTooLongIsRefused() throws Exception {
        long[] now = {0};
        Engine slow = new Engine("test", () -> now[0] += 31_000_000_000L);
        JobLine line = slow.jobLine(read(PLUG).get(0), UnitSystem.SI);
        assertTrue(line.refused());
        assertEquals(
                Violation.Key.TIME_LIMIT,
                Json.mapper()
                        .readTree(line.json())
                        .at("/problem/violations/0/key")
                        .asText());
        assertArrayEquals(
                line.json(), slow.jobLine(read(PLUG).get(0), UnitSystem.SI).json());
    }
}
