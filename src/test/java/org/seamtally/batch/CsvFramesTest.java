package org.seamtally.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.JobColumns;
import org.seamtally.wire.JobFrame;
import org.seamtally.wire.JobLine;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.RefusedException;
import org.seamtally.wire.Violation;

class CsvFramesTest {

    private static final Engine ENGINE = new Engine("test");

    private static final String HEADER =
            "frame,quantity,mark,kind,hole diameter [mm],depth [mm],branch outside diameter [in],"
                    + "branch wall [in],main outside diameter [in],main wall [in],tacks,preheated,access\n";
    private static final String PLUG = ",,,plug,10,3,,,,,,,\n";

    static List<JobFrame> read(byte[] file, byte[] settings) throws IOException, RefusedException {
        JobFrames frames = JobFiles.open(new ByteArrayInputStream(file), Form.CSV, settings);
        List<JobFrame> all = new ArrayList<>();
        for (JobFrame frame = frames.next(); frame != null; frame = frames.next()) {
            all.add(frame);
        }
        return all;
    }

    static List<JobFrame> read(String file) throws IOException, RefusedException {
        return read(file.getBytes(StandardCharsets.UTF_8), null);
    }

    /** Violations of a frame, as {@code place key}. */
    private static List<String> faults(JobFrame frame) throws IOException {
        JobLine line = ENGINE.jobLine(frame, UnitSystem.SI);
        assertTrue(line.refused(), () -> "refused: " + new String(line.json(), StandardCharsets.UTF_8));
        JsonNode json = Json.mapper().readTree(line.json());
        assertEquals(frame.line(), json.get("line").asLong());
        List<String> all = new ArrayList<>();
        json.at("/problem/violations")
                .forEach(v ->
                        all.add(v.get("path").asText() + ": " + v.get("key").asText()));
        return all;
    }

    private static void assertDone(JobFrame frame) {
        JobLine line = ENGINE.jobLine(frame, UnitSystem.SI);
        assertNotNull(line.totals(), () -> new String(line.json(), StandardCharsets.UTF_8));
    }

    private static List<Violation> refusal(String file) {
        return refusal(file.getBytes(StandardCharsets.UTF_8));
    }

    private static List<Violation> refusal(byte[] file) {
        RefusedException refused = assertThrows(RefusedException.class, () -> read(file, null));
        assertEquals(422, refused.problem().status());
        return refused.problem().violations();
    }

    @Test
    void rowsOfAFrameStandTogether() throws Exception {
        List<JobFrame> frames = read("\uFEFF" + HEADER + "A" + PLUG + "\n,,,,,,,,,,,,\nA" + PLUG + "\"B\"" + PLUG);
        assertEquals(List.of(2L, 6L), frames.stream().map(JobFrame::line).toList());
        assertEquals(List.of(2L, 5L), frames.get(0).places().lines());
        frames.forEach(CsvFramesTest::assertDone);
        JsonNode request = Json.mapper().readTree(frames.get(0).request());
        assertEquals("A", request.at("/frame/name").asText());
        assertEquals("10 mm", request.at("/frame/joints/1/holeDiameter").asText());
    }

    @Test
    void longRowsThatNameNoFrameAreNotHeardForTheNextFrameBeyondOneFramesLength() throws Exception {
        String nobodys = PLUG.replaceFirst(",,", ",," + "x".repeat(JobFiles.LONGEST_LINE * 3 / 5));
        List<JobFrame> frames = read(HEADER + "A" + PLUG + nobodys.repeat(3) + "B" + PLUG + "C" + PLUG);
        assertEquals(3, frames.size());
        assertEquals(List.of("line 2: too-long"), faults(frames.get(0)));
        List<String> next = faults(frames.get(1));
        assertTrue(next.stream().anyMatch(fault -> fault.endsWith("frame: missing")), next::toString);
        assertEquals(3, frames.get(1).line());
        assertDone(frames.get(2));
    }

    @ParameterizedTest
    @ValueSource(strings = {"\n", "\r\n", "\r"})
    void linesEndAsTheyLike(String end) throws Exception {
        String file = HEADER.replace("hole diameter", "\"hole\ndiameter").replace("[mm],depth", "[mm]\",depth");
        List<JobFrame> frames = read((file + "\"two\nlines\"" + PLUG + "B" + PLUG).replace("\n", end));
        assertEquals(List.of(3L, 5L), frames.stream().map(JobFrame::line).toList());
        assertEquals(List.of("line 3, frame: not-text"), faults(frames.get(0)));
        assertDone(frames.get(1));
    }

    @Test
    void lineEndsMayBeMixed() throws Exception {
        List<JobFrame> frames =
                read(HEADER + "A" + PLUG.replace("\n", "\r\n") + "B" + PLUG.replace("\n", "\r") + "C" + PLUG.strip());
        assertEquals(List.of(2L, 3L, 4L), frames.stream().map(JobFrame::line).toList());
        frames.forEach(CsvFramesTest::assertDone);
    }

    @Test
    void caseAndBlanksOfTheHeaderDoNotMatterAndQuantitiesTakeAnySpelling() throws Exception {
        List<JobFrame> frames =
                read("Frame ,KIND,\"Hole  Diameter [inches]\",depth[ \u2033 ]\nA,plug,3/8,.125\nB,plug,1-1/8,0.2\n");
        frames.forEach(CsvFramesTest::assertDone);
        JsonNode request = Json.mapper().readTree(frames.get(1).request());
        assertEquals("1-1/8 inches", request.at("/frame/joints/0/holeDiameter").asText());
    }

    @Test
    void truthIsAsSpreadsheetsWriteIt() throws Exception {
        String row = ",,,plug,10,3,,,,,,";
        String file = HEADER + "A" + row + "TRUE,\nB" + row + "false,1.5\nC" + row + "yes,\nD" + row + ",1e2x\n";
        List<JobFrame> frames = read(
                file.getBytes(StandardCharsets.UTF_8),
                "{\"preheat\": {\"temperature\": \"150 degC\"}}".getBytes(StandardCharsets.UTF_8));
        assertDone(frames.get(0));
        assertDone(frames.get(1));
        assertEquals(List.of("line 4, preheated: not-true-or-false"), faults(frames.get(2)));
        assertEquals(List.of("line 5, access: not-a-number"), faults(frames.get(3)));
    }

    @ParameterizedTest
    @CsvSource({
        "hole diameter [mm]; depth [mm], not-this-form",
        "wall, unknown-field",
        "hole diametr [mm], unknown-field",
        "hole diameter, unit-missing",
        "hole diameter [], unit-missing",
        "hole diameter [furlong], unit-unknown",
        "hole diameter [psi], unit-of-another-kind",
        "hole diameter [1/2 in], unit-unknown",
        "mark [mm], unknown-field",
        "kind, duplicate",
        "'', unknown-field"
    })
    void aWrongColumnIsNamed(String column, String key) {
        String header = key.equals("not-this-form") ? "frame;kind;" + column : "frame,kind,\"" + column + "\"";
        List<Violation> found = refusal(header + "\nA,plug,1\n");
        assertEquals(List.of(key), found.stream().map(Violation::key).toList());
    }

    @Test
    void aWrongColumnIsToldTheNearest() {
        Violation found =
                refusal("frame,kind,branch outside diametre [in]\nA,plug,1\n").get(0);
        assertTrue(found.message().contains("branch outside diameter"), found.message());
        assertEquals("line 1, column 3", found.path());
        assertTrue(found.taken().contains("branch outside diameter"));
    }

    @Test
    void whatATableNeedsIsMissed() {
        assertEquals(
                List.of("line 1, frame", "line 1, kind"),
                refusal("mark,depth [mm]\nA,1\n").stream().map(Violation::path).toList());
    }

    @Test
    void aTableWithoutAFrameIsRefused() {
        for (String file : List.of("", "\n\n", HEADER, HEADER + ",,,,,,,,,,,,\n", "\uFEFF")) {
            assertEquals(Violation.Key.EMPTY, refusal(file).get(0).key());
        }
    }

    @Test
    void filesOfAnotherSortAreRefusedWhole() {
        assertEquals(
                Violation.Key.NOT_THIS_FORM,
                refusal(HEADER.getBytes(StandardCharsets.UTF_16LE)).get(0).key());
        assertEquals(Violation.Key.NOT_THIS_FORM, refusal("PK\3\4").get(0).key());
        assertEquals(Violation.Key.QUOTES, refusal("\"frame,kind\n").get(0).key());
        assertEquals(
                Violation.Key.TOO_LONG,
                refusal("frame,kind," + "x".repeat(JobFiles.LONGEST_LINE))
                        .get(0)
                        .key());
    }

    @ParameterizedTest
    @CsvSource({
        "38 mm, unit-in-cell",
        "'1.5\"', unit-in-cell",
        "1.5 furlong, unit-in-cell",
        "'1,5', number-malformed",
        "1..5, number-malformed",
        "wide, number-malformed",
        "1e999, number-not-finite",
        "900, out-of-range"
    })
    void aWrongCellIsNamedAloneAndTheNextFrameIsRead(String cell, String key) throws Exception {
        String quoted = "\"" + cell.replace("\"", "\"\"") + "\"";
        List<JobFrame> frames = read(HEADER + "A,,,plug," + quoted + ",3,,,,,,,\nB" + PLUG);
        assertEquals(List.of("line 2, hole diameter [mm]: " + key), faults(frames.get(0)));
        assertDone(frames.get(1));
    }

    @Test
    void allThatIsWrongWithAFrameIsToldAtOnce() throws Exception {
        List<JobFrame> frames = read(HEADER
                + "A,2,,plug,10 mm,,,,,,x,,\n"
                + "A,3,,plug,10,3,1.5,,,,,,\n"
                + "A,,,tube-to-tube,,,,0.1,1.5,0.1,,,\"1,5\"\n"
                + "A,,,plugg,1,1,,,,,,,\n"
                + "A,,,plug,10,3\n"
                + "A,,,,10,3,,,,,,,\n");
        assertEquals(1, frames.size());
        assertEquals(
                List.of(
                        "line 2, depth [mm]: missing",
                        "line 2, hole diameter [mm]: unit-in-cell",
                        "line 2, tacks: not-a-number",
                        "line 3, branch: unknown-field",
                        "line 3, quantity: contradiction",
                        "line 4, access: number-malformed",
                        "line 4, branch outside diameter [in]: missing",
                        "line 5, kind: unknown-word",
                        "line 6: number-of-cells",
                        "line 7, kind: missing"),
                faults(frames.get(0)).stream().sorted().toList());
    }

    @Test
    void whatAPartLacksIsNotToldBesideItsFaultyCell() throws Exception {
        List<JobFrame> frames = read(HEADER + "A,,,tube-to-tube,,,1 in,,1.5,0.1,,,\n");
        assertEquals(
                List.of("line 2, branch outside diameter [in]: unit-in-cell", "line 2, branch wall [in]: missing"),
                faults(frames.get(0)).stream().sorted().toList());
    }

    @Test
    void aRowThatIsNotUtf8RefusesItsFrame() throws Exception {
        byte[] latin = (HEADER + "A,,Tr\u00e4ger,plug,10,3,,,,,,,\nB" + PLUG).getBytes(StandardCharsets.ISO_8859_1);
        List<JobFrame> frames = read(latin, null);
        assertEquals(List.of("line 2, mark: not-utf-8"), faults(frames.get(0)));
        assertDone(frames.get(1));
    }

    @Test
    void aFrameThatReturnsIsRefusedAsOne() throws Exception {
        List<JobFrame> frames = read(HEADER + "A" + PLUG + "B" + PLUG + "A" + PLUG + "A" + PLUG + "C" + PLUG);
        assertEquals(4, frames.size());
        assertEquals(List.of("line 4, frame: frame-returns"), faults(frames.get(2)));
        assertDone(frames.get(3));
    }

    @Test
    void brokenQuotesRefuseTheFrameTheyNameAlone() throws Exception {
        List<JobFrame> frames = read(HEADER + "A" + PLUG + "B,,\"x\"y,plug,10,3,,,,,,,\nB" + PLUG + "C" + PLUG);
        assertEquals(3, frames.size());
        assertDone(frames.get(0));
        assertEquals(List.of("line 3: quotes"), faults(frames.get(1)));
        assertDone(frames.get(2));
    }

    @Test
    void aRowThatTellsNoFrameRefusesBothThatItMayBelongTo() throws Exception {
        List<JobFrame> frames = read(HEADER + "A" + PLUG + PLUG + "B" + PLUG + "C" + PLUG);
        assertEquals(3, frames.size());
        assertEquals(List.of("line 3, frame: missing"), faults(frames.get(0)));
        assertEquals(List.of("line 3, frame: missing"), faults(frames.get(1)));
        assertDone(frames.get(2));
        frames = read(HEADER + PLUG + "A" + PLUG + "A" + PLUG + "B" + PLUG);
        assertEquals(2, frames.size());
        assertEquals(List.of("line 2, frame: missing"), faults(frames.get(0)));
        assertDone(frames.get(1));
    }

    @Test
    void readingEndsWhereAQuoteIsNeverClosed() throws Exception {
        List<JobFrame> frames = read(HEADER + "A" + PLUG + "B,,\"x,plug,10,3,,,,,,,\nC" + PLUG);
        assertEquals(2, frames.size());
        assertDone(frames.get(0));
        assertEquals(List.of("line 3: quotes"), faults(frames.get(1)));
    }

    @Test
    void aRowOrAFrameThatIsTooLongIsNotHeld() throws Exception {
        byte[] start = (HEADER + "A,,\"").getBytes(StandardCharsets.UTF_8);
        InputStream huge = new NdjsonFramesTest.Repeated('\n', 100 << 20);
        byte[] end = ("\",plug,10,3,,,,,,,\nB" + PLUG).getBytes(StandardCharsets.UTF_8);
        JobFrames frames = JobFiles.open(
                new SequenceInputStream(
                        new ByteArrayInputStream(start), new SequenceInputStream(huge, new ByteArrayInputStream(end))),
                Form.CSV,
                null);
        assertEquals(List.of("line 2: too-long"), faults(frames.next()));
        JobFrame next = frames.next();
        assertEquals(3 + (100 << 20), next.line());
        assertDone(next);
        assertNull(frames.next());

        String name = "A".repeat(180);
        List<JobFrame> many = read(HEADER + (name + PLUG).repeat(6000) + "B" + PLUG);
        assertEquals(List.of("line 2: too-long"), faults(many.get(0)));
        assertEquals(6002, many.get(1).line());
        assertDone(many.get(1));
        assertNull(read(HEADER + ("A" + PLUG).repeat(10_000)).get(0).problem());
        many = read(HEADER + ("A" + PLUG).repeat(10_001) + "B" + PLUG);
        assertEquals(List.of("line 2: too-long"), faults(many.get(0)));
        assertDone(many.get(1));
    }

    @Test
    void settingsAreInEveryFrame() throws Exception {
        byte[] settings = "{\"gas\": {\"flow\": \"9 L/min\"}}".getBytes(StandardCharsets.UTF_8);
        for (JobFrame frame :
                read((HEADER + "A,3,,plug,10,3,,,,,,,\nB" + PLUG).getBytes(StandardCharsets.UTF_8), settings)) {
            assertDone(frame);
            assertEquals(
                    "9 L/min",
                    Json.mapper().readTree(frame.request()).at("/gas/flow").asText());
        }
    }

    static List<Path> samples() throws IOException {
        return NdjsonFramesTest.samples();
    }

    @ParameterizedTest
    @MethodSource("samples")
    void aTableIsTheEstimateOfTheSameFrameByItself(Path sample) throws Exception {
        ObjectNode settings = (ObjectNode) Json.mapper().readTree(sample.toFile());
        ObjectNode named = (ObjectNode) settings.get("frame");
        named.put("name", named.path("name").asText("a frame of a table has its name"));
        byte[] json = Json.mapper().writeValueAsBytes(settings);
        JsonNode frame = settings.remove("frame");
        String table = table(frame);
        for (UnitSystem units : UnitSystem.values()) {
            JobFrame read = read(
                            table.getBytes(StandardCharsets.UTF_8),
                            Json.mapper().writeValueAsBytes(settings))
                    .get(0);
            Outcome<FrameEstimateAnswer> single = ENGINE.frameEstimate(new ByteArrayInputStream(json), units);
            String estimate =
                    Json.mapper().writeValueAsString(((Outcome.Answered<FrameEstimateAnswer>) single).answer());
            String line = new String(ENGINE.jobLine(read, units).json(), StandardCharsets.UTF_8);
            assertEquals("", difference("{\"line\":2,\"estimate\":" + estimate + "}", line));
        }
    }

    @Test
    void theSampleFilesOfBothFormsAreTheSameOrders() throws Exception {
        byte[] settings = Files.readAllBytes(Path.of("sample-jobs/shop-settings.json"));
        List<JobFrame> table = read(Files.readAllBytes(Path.of("sample-jobs/open-orders.csv")), settings);
        List<JobFrame> lines =
                NdjsonFramesTest.read(Files.readAllBytes(Path.of("sample-jobs/open-orders.ndjson")), settings);
        assertEquals(12, table.size());
        assertEquals(12, lines.size());
        for (int i = 0; i < 12; i++) {
            assertDone(table.get(i));
            assertEquals("", difference(estimate(lines.get(i)), estimate(table.get(i))));
        }
    }

    private static String estimate(JobFrame frame) throws IOException {
        return Json.mapper()
                .readTree(ENGINE.jobLine(frame, UnitSystem.US).json())
                .get("estimate")
                .toString();
    }

    /** Empty where the texts are the same; a long answer would bury what differs. */
    private static String difference(String expected, String actual) {
        if (expected.equals(actual)) {
            return "";
        }
        int at = 0;
        while (at < Math.min(expected.length(), actual.length()) && expected.charAt(at) == actual.charAt(at)) {
            at++;
        }
        return "at " + at + ": " + expected.substring(Math.max(0, at - 60), Math.min(expected.length(), at + 80))
                + " / " + actual.substring(Math.max(0, at - 60), Math.min(actual.length(), at + 80));
    }

    /** A frame as a table, written by the library, a column for each field that any of its joints has. */
    private static String table(JsonNode frame) throws IOException {
        List<Map<String, String>> rows = new ArrayList<>();
        frame.get("joints").forEach(joint -> {
            Map<String, String> row = new LinkedHashMap<>();
            row.put("frame", frame.path("name").asText());
            row.put("quantity", frame.path("quantity").asText(""));
            flatten("", joint, row);
            rows.add(row);
        });
        Map<String, String> units = new TreeMap<>();
        rows.forEach(row -> row.forEach((field, text) -> {
            if (isLengthy(field)) {
                units.merge(field, text.replaceAll("^[-0-9./ ]+", ""), (one, other) -> one.equals(other) ? one : "mm");
            }
        }));
        List<String> fields =
                rows.stream().flatMap(row -> row.keySet().stream()).distinct().toList();
        StringBuilder csv = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(csv, CSVFormat.RFC4180)) {
            printer.printRecord(fields.stream().map(f -> units.containsKey(f) ? f + " [" + units.get(f) + "]" : f));
            for (Map<String, String> row : rows) {
                printer.printRecord(fields.stream().map(f -> cell(row.getOrDefault(f, ""), units.get(f))));
            }
        }
        return csv.toString();
    }

    private static final Set<String> LENGTHY = JobColumns.headers().stream()
            .filter(header -> header.endsWith("]"))
            .map(header -> header.replaceAll(" \\[.*", ""))
            .collect(Collectors.toSet());

    private static boolean isLengthy(String field) {
        return LENGTHY.contains(field);
    }

    private static String cell(String text, String unit) {
        if (unit == null || text.isEmpty()) {
            return text;
        }
        if (text.endsWith(unit)) {
            return text.substring(0, text.length() - unit.length()).strip();
        }
        // lengths in inches beside lengths in millimetres: the same in millimetres, exactly
        return BigDecimal.valueOf(Dimension.LENGTH.read(text)).movePointRight(3).toPlainString();
    }

    private static void flatten(String words, JsonNode part, Map<String, String> row) {
        part.properties().forEach(field -> {
            String name = words + field.getKey().replaceAll("([A-Z])", " $1").toLowerCase(java.util.Locale.ROOT);
            if (field.getValue().isObject()) {
                flatten(name + " ", field.getValue(), row);
            } else {
                row.put(name, field.getValue().asText());
            }
        });
    }

    @Test
    void everyFieldOfEveryKindHasAColumn() {
        List<String> headers = JobColumns.headers();
        assertEquals(headers.size(), headers.stream().distinct().count());
        List<String> words =
                headers.stream().map(h -> h.replaceAll(" \\[.*", "")).toList();
        JsonNode kinds = Json.mapper().valueToTree(org.seamtally.wire.CatalogueAnswers.jointKinds());
        int fields = count(kinds, words);
        assertTrue(fields > 100, "fields looked at: " + fields);
    }

    private static int count(JsonNode node, List<String> words) {
        int fields = 0;
        if (node.has("field") && node.has("holds")) {
            String column = node.get("field")
                    .asText()
                    .replace('.', ' ')
                    .replaceAll("([A-Z])", " $1")
                    .toLowerCase(java.util.Locale.ROOT);
            assertTrue(words.contains(column), column);
            fields++;
        }
        for (JsonNode inner : node) {
            fields += count(inner, words);
        }
        return fields;
    }

    @Test
    void namesOfAnEntireCatalogueAreKeptApart() {
        SeenNames seen = new SeenNames();
        IntStream.range(0, 200_000).forEach(i -> assertTrue(seen.add("frame " + i)));
        IntStream.range(0, 200_000).forEach(i -> assertEquals(false, seen.add("frame " + i)));
    }
}
