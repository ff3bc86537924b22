package org.seamtally.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.catalogue.Catalogue;
import org.seamtally.wire.ProgramVersion;
import picocli.CommandLine;

/** The shell: what it prints where, and with which exit code it ends. */
class ShellTest {

    private static final String SAMPLE = "sample-jobs/trail-buggy-rear-bay.json";

    @TempDir
    private Path directory;

    /** What a command printed, and how it ended. */
    private record Ran(int code, String out, String err) {

        static Ran of(String... words) {
            StringWriter out = new StringWriter();
            StringWriter err = new StringWriter();
            CommandLine commands = Main.commands().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
            int code = commands.execute(words);
            return new Ran(code, out.toString(), err.toString());
        }

        /** The line that begins with these words. */
        String line(String start) {
            return out.lines()
                    .filter(line -> line.startsWith(start))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private String file(String text) throws IOException {
        Path file = directory.resolve("request.json");
        Files.writeString(file, text);
        return file.toString();
    }

    static Stream<Path> samples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("sample-jobs"))) {
            List<Path> found = files.filter(file -> file.toString().endsWith(".json"))
                    // a batch's settings are no request
                    .filter(file -> !file.endsWith("shop-settings.json"))
                    .sorted()
                    .toList();
            assertFalse(found.isEmpty());
            return found.stream();
        }
    }

    private static String command(Path sample) throws IOException {
        String text = Files.readString(sample);
        if (text.contains("\"fillers\"")) {
            return "review";
        }
        return text.contains("\"setUps\"") ? "compare" : "estimate";
    }

    @ParameterizedTest
    @MethodSource("samples")
    void theTableOfEachSampleFitsASheet(Path sample) throws IOException {
        for (String units : List.of("si", "us")) {
            Ran ran = Ran.of(command(sample), sample.toString(), "--units", units);
            assertEquals(0, ran.code(), ran.err());
            assertEquals("", ran.err());
            ran.out().lines().forEach(line -> {
                assertTrue(line.length() <= 100, line.length() + " columns: " + line);
                assertEquals(line.stripTrailing(), line, "blanks at the end");
                assertFalse(line.contains("null") || line.contains("NaN") || line.contains("\t"), line);
            });
            assertTrue(ran.out().contains("Cautions:"));
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void jsonAndCsvOfEachSampleAreReadBack(Path sample) throws IOException {
        JsonNode answer = new JsonMapper()
                .readTree(Ran.of(command(sample), sample.toString(), "--format", "json")
                        .out());
        List<CSVRecord> rows = rows(Ran.of(command(sample), sample.toString(), "--format", "csv"));
        Map<String, String> lists = Map.of("estimate", "joints", "compare", "setUps", "review", "fillers");
        JsonNode things = answer.path(lists.get(command(sample)));
        assertTrue(things.size() > 0);
        assertEquals(1 + things.size(), rows.size());
        for (CSVRecord row : rows) {
            assertEquals(rows.get(0).size(), row.size());
        }
        for (int i = 0; i < things.size(); i++) {
            JsonNode thing = things.get(i);
            String name = Stream.of("mark", "name", "filler")
                    .filter(thing::has)
                    .findFirst()
                    .map(field -> thing.get(field).textValue())
                    .orElseThrow();
            assertEquals(name, rows.get(i + 1).get(0));
        }
    }

    private static List<CSVRecord> rows(Ran ran) throws IOException {
        assertEquals(0, ran.code(), ran.err());
        try (var parser = CSVFormat.RFC4180.parse(new StringReader(ran.out()))) {
            return parser.getRecords();
        }
    }

    /** The figures that the sample's answer was computed to have, apart from this project. */
    @Test
    void theTableShowsTheSamplesFigures() {
        Ran ran = Ran.of("estimate", SAMPLE);
        assertEquals(
                "Two-seat trail buggy, rear bay, 6 frames",
                ran.out().lines().findFirst().orElseThrow());
        assertTrue(ran.line("R1 ").matches("R1 +2 +tube-to-tube +175\\.9 +45-180 +814\\.4 .*"), ran.line("R1 "));
        assertTrue(ran.line("S1 ").contains(" 0:39 "), "39.27 s: " + ran.line("S1 "));
        assertTrue(ran.line("H1 ").matches("H1 +4 +plug +- +- .*"), ran.line("H1 "));
        assertTrue(
                ran.line("A frame").matches("A frame .*plugs: 4 +1 458 +7 568 +64\\.19 +13:59 .*"),
                ran.line("A frame"));
        assertTrue(ran.line("labour  ").matches("labour +3:10:15 +19:01:30"), ran.line("labour  "));
        assertTrue(ran.line("pre-flow").matches("pre-flow +4\\.4 L +26 L +2\\.1 %"), ran.line("pre-flow"));
        assertTrue(ran.line("total").endsWith(" 1 816.30"), ran.line("total"));
        assertTrue(ran.line("for one frame").endsWith(" 302.72"), ran.line("for one frame"));
        assertTrue(ran.out().contains("Price of the order, welding only"));
    }

    @Test
    void figuresStandInColumns() {
        List<String> lines = Ran.of("estimate", SAMPLE).out().lines().toList();
        int rule = lines.indexOf(
                lines.stream().filter(l -> l.matches("-+")).findFirst().orElseThrow());
        int width = lines.get(rule).length();
        for (int i = rule + 1; !lines.get(i).isEmpty(); i++) {
            assertEquals(width, lines.get(i).length(), "the gas column ends each line: " + lines.get(i));
        }
    }

    @Test
    void unitsChangeWhatIsShown() throws IOException {
        JsonNode us = new JsonMapper()
                .readTree(Ran.of("estimate", SAMPLE, "--units", "us", "--format", "json")
                        .out());
        assertEquals(
                "in",
                us.path("perFrame").path("seam").path("length").path("unit").textValue());
        assertEquals(
                1458.301 / 25.4,
                us.path("perFrame").path("seam").path("length").path("value").doubleValue(),
                1e-4);
        List<CSVRecord> rows = rows(Ran.of("estimate", SAMPLE, "--units", "US", "--format", "CSV"));
        assertEquals("seam length [in]", rows.get(0).get(4));
        assertEquals(175.9137 / 25.4, Double.parseDouble(rows.get(1).get(4)), 1e-5);
        assertEquals(
                "seam length [mm]",
                rows(Ran.of("estimate", SAMPLE, "--format", "csv")).get(0).get(4));
    }

    @Test
    void whatWasAssumedIsPrintedAndNoPriceWithoutPrices() throws IOException {
        Ran ran = Ran.of(
                "estimate",
                file(
                        "{\"frame\": {\"joints\": [{\"kind\": \"plug\", \"holeDiameter\": \"9 mm\", \"depth\": \"2 mm\"}]}}"));
        assertEquals(0, ran.code(), ran.err());
        assertEquals("1 frame", ran.out().lines().findFirst().orElseThrow());
        assertTrue(ran.out().contains("Assumed, since it was left out:"));
        assertTrue(ran.out()
                .contains("  arc.voltage: 11 V (9 to 15 V across a short argon arc: common practice, no source)"));
        assertFalse(ran.out().contains("Price of the order"));
        ran.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
    }

    @Test
    void aProblemGoesToTheErrorsWithPathAndWhatIsTaken() throws IOException {
        String bad = Files.readString(Path.of(SAMPLE))
                .replace("\"50 psi\"", "\"50 mm\"")
                .replace("\"quantity\": 6", "\"quantity\": 0");
        Ran ran = Ran.of("estimate", file(bad));
        assertEquals(1, ran.code());
        assertEquals("", ran.out());
        List<String> lines = ran.err().lines().toList();
        assertEquals(3, lines.size(), ran.err());
        assertTrue(lines.get(0).endsWith("request.json: The request cannot be worked with."), lines.get(0));
        assertEquals("  frame.quantity: taken here: 1 to 1000000 (given: 0)", lines.get(1));
        assertTrue(lines.get(2).startsWith("  gas.supplyGaugePressure: "), lines.get(2));
        assertTrue(lines.get(2).endsWith("(given: \"50 mm\") [psi, bar, mbar, Pa, kPa, MPa]"), lines.get(2));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{", "null", "[]", "{\"frame\": 1}"})
    void aBodyThatIsNoneEndsWithOneAndNoTrace(String text) throws IOException {
        for (String command : List.of("estimate", "compare")) {
            Ran ran = Ran.of(command, file(text));
            assertEquals(1, ran.code());
            assertEquals("", ran.out());
            assertTrue(ran.err().contains("request.json: The "), ran.err());
            assertFalse(ran.err().contains("Exception") || ran.err().contains("\tat "), ran.err());
        }
    }

    @Test
    void aHyphenReadsStandardInput() throws IOException {
        InputStream usual = System.in;
        try {
            System.setIn(
                    new ByteArrayInputStream(Files.readString(Path.of(SAMPLE)).getBytes(UTF_8)));
            assertEquals(Ran.of("estimate", SAMPLE), Ran.of("estimate", "-"));
        } finally {
            System.setIn(usual);
        }
    }

    @Test
    void aMissingFileAndADirectoryEndWithTwo() {
        Ran missing = Ran.of("estimate", directory.resolve("none.json").toString());
        assertEquals(2, missing.code());
        assertEquals(
                directory.resolve("none.json") + ": no such file", missing.err().strip());
        Ran unreadable = Ran.of("estimate", directory.toString());
        assertEquals(2, unreadable.code());
        assertEquals(directory + ": cannot be read", unreadable.err().strip());
        assertEquals("", missing.out() + unreadable.out());
    }

    @ParameterizedTest
    @CsvSource({
        "estimate",
        "estimate --units imperial sample-jobs/x.json",
        "estimate --format pdf sample-jobs/x.json",
        "estimate a.json b.json",
        "weigh",
        "compare",
        "estimate --currency USD a.json"
    })
    void wordsThatAreNotTakenEndWithTwoAndTheUsage(String words) {
        Ran ran = Ran.of(words.split(" "));
        assertEquals(2, ran.code());
        assertEquals("", ran.out());
        assertTrue(ran.err().contains("Usage: seamtally"), ran.err());
    }

    @Test
    void helpAndVersion() {
        Ran help = Ran.of("--help");
        assertEquals(0, help.code());
        for (String command : List.of("estimate", "compare", "serve")) {
            assertTrue(help.out().contains("  " + command + " "), help.out());
        }
        Ran estimate = Ran.of("estimate", "--help");
        assertEquals(0, estimate.code());
        assertTrue(estimate.out().contains("--units=si|us"), estimate.out());
        assertTrue(estimate.out().contains("--format=table|json|csv"), estimate.out());
        Ran version = Ran.of("--version");
        assertEquals(0, version.code());
        assertEquals(
                "seamtally " + ProgramVersion.text() + ", catalogue " + Catalogue.version(),
                version.out().strip());
    }

    @Test
    void setUpsAreComparedSideBySide() throws IOException {
        String request = file("{\"duty\": {\"startsPerShift\": 220, \"burnTime\": \"22 s\", \"arcOffTime\": \"40 s\","
                + " \"shiftsPerYear\": 230, \"current\": \"90 A\"}, \"currency\": \"USD\", \"gasPrice\": \"0.35/ft3\","
                + " \"setUps\": [{\"name\": \"as it is\"}, {\"name\": \"small bore\","
                + " \"hose\": {\"insideDiameter\": \"0.112 in\", \"length\": \"25 ft\"}, \"price\": \"68.00\"}]}");
        Ran table = Ran.of("compare", request);
        assertEquals(0, table.code(), table.err());
        table.out()
                .lines()
                .forEach(line -> assertTrue(line.length() <= 100 && line.equals(line.stripTrailing()), line));
        assertTrue(table.line("as it is").startsWith("as it is"));
        List<CSVRecord> rows = rows(Ran.of("compare", request, "--format", "csv"));
        assertEquals(3, rows.size());
        assertEquals("small bore", rows.get(2).get(0));
        assertTrue(
                Double.parseDouble(rows.get(2).get(3))
                        < Double.parseDouble(rows.get(1).get(3)),
                "less surge");
        JsonNode answer = new JsonMapper()
                .readTree(Ran.of("compare", request, "--format", "json").out());
        assertEquals(2, answer.path("setUps").size());
    }
}
