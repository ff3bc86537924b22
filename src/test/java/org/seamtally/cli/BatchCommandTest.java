package org.seamtally.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamtally.batch.BadFile;
import org.seamtally.batch.Form;
import org.seamtally.load.JobFile;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.Json;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.ProgramVersion;

/** The shell's batch: what it writes where, with which exit code it ends, and how it goes on after it was cut. */
class BatchCommandTest {

    private static final JsonMapper JSON = new JsonMapper();
    private static final String SETTINGS =
            "{\"arc\": {\"current\": \"80 A\"}, \"prices\": {\"currency\": \"EUR\"," + " \"labour\": \"50.00/h\"}}";

    @TempDir
    private Path directory;

    /** How a command ended, and what it said. */
    private record Ran(int code, String out, String err) {}

    private static Ran batch(Object... words) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        List<String> all = new ArrayList<>(List.of("batch"));
        Arrays.stream(words).map(Object::toString).forEach(all::add);
        int code = Main.commands()
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(all.toArray(String[]::new));
        return new Ran(code, out.toString(), err.toString());
    }

    private Path jobs(Form form, long frames, double refused) throws IOException {
        return write("jobs." + form.name().toLowerCase(), JobFile.bytes(form, frames, 11, 2, refused));
    }

    private Path write(String name, byte[] bytes) throws IOException {
        return Files.write(directory.resolve(name), bytes);
    }

    private Path out() {
        return directory.resolve("results");
    }

    private Path beside() {
        return directory.resolve("results.progress");
    }

    private Set<String> names() throws IOException {
        try (Stream<Path> files = Files.list(directory)) {
            return files.map(file -> file.getFileName().toString()).collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @Test
    void eachLineIsTheSingleEstimateAndTheLastOneCounts() throws IOException {
        Path jobs = jobs(Form.NDJSON, 25, 0);
        Ran ran = batch(jobs, "--out", out(), "--units", "us");
        assertEquals(0, ran.code(), ran.err());
        assertEquals("", ran.out());
        assertEquals(
                jobs + ": 25 frames read, 25 done, 0 refused; the results are in " + out(),
                ran.err().strip());
        List<String> results = Files.readAllLines(out());
        assertEquals(26, results.size());
        Engine engine = new Engine(ProgramVersion.text());
        List<String> requests = Files.readAllLines(jobs);
        for (int i = 0; i < 25; i++) {
            JsonNode result = JSON.readTree(results.get(i));
            assertEquals(i + 1, result.path("line").asInt());
            Outcome<FrameEstimateAnswer> alone = engine.frameEstimate(
                    new ByteArrayInputStream(requests.get(i).getBytes(UTF_8)), UnitSystem.US);
            FrameEstimateAnswer answer = ((Outcome.Answered<FrameEstimateAnswer>) alone).answer();
            assertEquals(JSON.readTree(Json.mapper().writeValueAsString(answer)), result.path("estimate"));
        }
        assertEquals(
                JSON.readTree("{\"trailer\": {\"read\": 25, \"done\": 25, \"refused\": 0, \"complete\": true}}"),
                JSON.readTree(results.get(25)));
        assertEquals(Set.of("jobs.ndjson", "results"), names(), "nothing stays beside whole results");
    }

    @ParameterizedTest
    @CsvSource({"NDJSON, ndjson", "NDJSON, csv", "CSV, ndjson", "CSV, csv"})
    void theExitCodeSaysThatSomeWereRefusedAndTheCountsHowMany(Form form, String format) throws IOException {
        Path jobs = jobs(form, 30, 0.3);
        Ran ran = batch(jobs, "--out", out(), "--format", format);
        assertEquals(BatchCommand.SOME_REFUSED, ran.code(), ran.err());
        WrittenResults written = written(format.equals("csv") ? Form.CSV : Form.NDJSON);
        assertTrue(written.complete());
        assertEquals(30, written.counts().read());
        assertTrue(written.counts().refused() > 0 && written.counts().done() > 0, "both sorts: " + written);
        assertTrue(ran.err()
                .contains(": 30 frames read, " + written.counts().done() + " done, "
                        + written.counts().refused() + " refused;"));
    }

    private WrittenResults written(Form form) throws IOException {
        try (InputStream in = Files.newInputStream(out())) {
            return WrittenResults.read(in, form);
        } catch (NotBegunException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void settingsHoldForAllFrames() throws IOException {
        Path settings = write("shop.json", SETTINGS.getBytes(UTF_8));
        Ran ran = batch(jobs(Form.CSV, 3, 0), "--out", out(), "--settings", settings);
        assertEquals(0, ran.code(), ran.err());
        for (String line : Files.readAllLines(out()).subList(0, 3)) {
            assertEquals(
                    "EUR", JSON.readTree(line).at("/estimate/cost/currency").textValue());
        }
    }

    @Test
    void standardInputIsReadAsItIsToldTo() throws IOException {
        InputStream before = System.in;
        System.setIn(new ByteArrayInputStream(JobFile.bytes(Form.CSV, 5, 11, 2, 0)));
        try {
            Ran ran = batch("-", "--input-form", "csv", "--out", out());
            assertEquals(0, ran.code(), ran.err());
            assertEquals(5, written(Form.NDJSON).counts().done());
            assertFalse(Files.exists(beside()));
        } finally {
            System.setIn(before);
        }
    }

    @ParameterizedTest
    @EnumSource
    void cutAnywhereAndGoneOnWithItIsWhatOneRunWrites(Form format) throws IOException {
        Path jobs = jobs(Form.NDJSON, 12, 0.2);
        String form = format.name().toLowerCase();
        Ran whole = batch(jobs, "--out", out(), "--format", form);
        byte[] expected = Files.readAllBytes(out());
        byte[] origin = beside(jobs, form);

        long seed = 20;
        Set<Integer> cuts = new TreeSet<>();
        new Random(seed).ints(30, 0, expected.length).forEach(cuts::add);
        // the beginning, and every byte of the trailer
        cuts.addAll(List.of(0, 1, 5));
        for (int cut = expected.length - 1; cut >= expected.length - 80; cut--) {
            cuts.add(cut);
        }
        // the line ends
        for (int i = 0; i < expected.length; i++) {
            if (expected[i] == '\n') {
                cuts.addAll(List.of(i, Math.min(i + 1, expected.length - 1)));
            }
        }
        for (int cut : cuts) {
            Files.write(out(), Arrays.copyOf(expected, cut));
            Files.write(beside(), origin);
            Ran ran = batch(jobs, "--out", out(), "--format", form, "--resume", "--workers", 1 + cut % 3);
            String where = "seed " + seed + ", cut at " + cut + ": " + ran.err();
            assertEquals(whole.code(), ran.code(), where);
            assertArrayEquals(expected, Files.readAllBytes(out()), where);
            assertFalse(Files.exists(beside()), where);
            assertEquals(whole.err(), ran.err(), where);
        }
    }

    /** What a run leaves beside its results while it goes on. */
    private byte[] beside(Path jobs, String format) throws IOException {
        ResultOrigin origin = new ResultOrigin(
                ResultOrigin.digest(jobs), "ndjson", null, format, "si", new Engine(ProgramVersion.text()).identity());
        return Json.mapper().writeValueAsBytes(origin);
    }

    /** A frame is the same frame in either form: its result differs by the line that it starts in, and by nothing else. */
    @Test
    void aTableGivesWhatItsRequestsGive() throws IOException {
        Path table = directory.resolve("table");
        assertEquals(0, batch(jobs(Form.NDJSON, 12, 0), "--out", out()).code());
        assertEquals(0, batch(jobs(Form.CSV, 12, 0), "--out", table).code());
        List<String> requests = Files.readAllLines(out());
        List<String> rows = Files.readAllLines(table);
        assertEquals(13, rows.size());
        for (int i = 0; i < 13; i++) {
            String line = "^\\{\"line\":[0-9]+,";
            assertEquals(requests.get(i).replaceFirst(line, ""), rows.get(i).replaceFirst(line, ""));
        }
    }

    /** A process of its own, killed outright while it writes. */
    @Test
    void killedOutrightAndGoneOnWithNothingIsLostOrDoubled() throws Exception {
        Path jobs = jobs(Form.NDJSON, 400, 0.05);
        Path whole = directory.resolve("whole");
        assertEquals(BatchCommand.SOME_REFUSED, batch(jobs, "--out", whole).code());
        byte[] expected = Files.readAllBytes(whole);
        long seed = 8;
        Random random = new Random(seed);
        int kills = 0;
        // where the machine is busy a run may be over before it is killed: that one does not count
        for (int run = 0; run < 15 && kills < 3; run++) {
            Files.deleteIfExists(out());
            long at = 1 + random.nextInt(expected.length / 2);
            Process process = shell(jobs, "--out", out(), "--workers", 2);
            while (!process.waitFor(1, TimeUnit.MILLISECONDS) && (!Files.exists(out()) || Files.size(out()) < at)) {}
            process.destroyForcibly().waitFor();
            String where = "seed " + seed + ", run " + run + " killed at " + at;
            kills += Files.exists(beside()) && Files.size(out()) < expected.length ? 1 : 0;
            assertEquals(
                    BatchCommand.SOME_REFUSED,
                    batch(jobs, "--out", out(), "--resume").code(),
                    where);
            assertArrayEquals(expected, Files.readAllBytes(out()), where);
        }
        assertEquals(3, kills, "killed while they wrote, seed " + seed);
    }

    private Process shell(Object... words) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "batch"));
        Arrays.stream(words).map(Object::toString).forEach(command::add);
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    @Test
    void wholeResultsAreSaidToBeSo() throws IOException {
        Path jobs = jobs(Form.NDJSON, 6, 0.5);
        Ran first = batch(jobs, "--out", out());
        byte[] expected = Files.readAllBytes(out());
        // killed between the trailer and the end
        Files.write(beside(), beside(jobs, "ndjson"));
        for (int i = 0; i < 2; i++) {
            Ran again = batch(jobs, "--out", out(), "--resume");
            assertEquals(first.code(), again.code());
            assertEquals(
                    first.err().strip() + ", which was complete already",
                    again.err().strip());
            assertArrayEquals(expected, Files.readAllBytes(out()));
            assertFalse(Files.exists(beside()));
        }
    }

    @Test
    void toResumeWhatWasNotBegunIsToBegin() throws IOException {
        Path jobs = jobs(Form.NDJSON, 3, 0);
        Files.writeString(beside(), "left over");
        assertEquals(0, batch(jobs, "--out", out(), "--resume").code());
        assertEquals(3, written(Form.NDJSON).counts().done());
        assertFalse(Files.exists(beside()));
    }

    @Test
    void nothingIsWrittenOver() throws IOException {
        Path jobs = jobs(Form.NDJSON, 2, 0);
        Files.writeString(out(), "the shop's own");
        Ran ran = batch(jobs, "--out", out());
        assertEquals(BatchCommand.NOT_ENDED, ran.code());
        assertTrue(ran.err().contains("is there already"), ran.err());
        assertEquals("the shop's own", Files.readString(out()));
        assertEquals(Set.of("jobs.ndjson", "results"), names());
        Ran itself = batch(jobs, "--out", jobs);
        assertEquals(BatchCommand.NOT_ENDED, itself.code());
        assertArrayEquals(JobFile.bytes(Form.NDJSON, 2, 11, 2, 0), Files.readAllBytes(jobs));
    }

    @ParameterizedTest
    @CsvSource({
        "jobs, the job file is not the one",
        "settings, the settings are not those",
        "units, they are in the units si",
        "format, they are in the form ndjson",
        "input-form, the job file was read as csv",
        "engine, another version made them: 0.0.1",
        "nothing beside, nothing beside it says",
        "damaged beside, was not written by this program",
        "foreign line, line 2 is no result",
        "line left out, its lines are not those of the job file",
        "counts, its counts are not those of its lines",
    })
    void resultsOfSomethingElseAreNotGoneOnWith(String other, String words) throws IOException {
        Path jobs = jobs(Form.NDJSON, 6, 0);
        assertEquals(0, batch(jobs, "--out", out()).code());
        List<String> lines = new ArrayList<>(Files.readAllLines(out()));
        List<Object> command = new ArrayList<>(List.of(jobs, "--out", out(), "--resume"));
        String origin = new String(beside(jobs, "ndjson"), UTF_8);
        int kept = 3;
        switch (other) {
            case "jobs" -> jobs(Form.NDJSON, 7, 0);
            case "settings" -> command.addAll(List.of("--settings", write("s.json", SETTINGS.getBytes(UTF_8))));
            case "units" -> command.addAll(List.of("--units", "us"));
            case "format" -> command.addAll(List.of("--format", "csv"));
            case "input-form" -> origin = origin.replace("\"inputForm\":\"ndjson\"", "\"inputForm\":\"csv\"");
            case "engine" -> origin = origin.replace(ProgramVersion.text(), "0.0.1");
            case "damaged beside" -> origin = origin.substring(0, origin.length() / 2);
            case "foreign line" -> lines.set(1, "{}");
            case "line left out" -> lines.remove(1);
            case "counts" -> {
                lines.remove(1);
                kept = lines.size();
            }
            default -> assertEquals("nothing beside", other);
        }
        String cut = String.join("\n", lines.subList(0, kept)) + "\n";
        Files.writeString(out(), cut);
        if (!other.equals("nothing beside")) {
            Files.writeString(beside(), origin);
        }
        Ran ran = batch(command.toArray());
        assertEquals(BatchCommand.NOT_ENDED, ran.code(), ran.err());
        assertTrue(ran.err().contains(words), ran.err());
        assertEquals(cut, Files.readString(out()), "left as it was");
    }

    @Test
    void twoRunsDoNotWriteToTheSameFile() throws IOException {
        Path jobs = jobs(Form.NDJSON, 3, 0);
        Files.write(beside(), beside(jobs, "ndjson"));
        try (FileChannel other = FileChannel.open(out(), StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                FileLock lock = other.lock()) {
            assertTrue(lock.isValid());
            Ran ran = batch(jobs, "--out", out(), "--resume");
            assertEquals(BatchCommand.NOT_ENDED, ran.code());
            assertTrue(ran.err().contains("another run is writing to"), ran.err());
        }
        assertEquals(0, batch(jobs, "--out", out(), "--resume").code());
    }

    @ParameterizedTest
    @CsvSource({"jobs.ndjson, ''", "jobs.csv, ''", "jobs.csv, 'frame,kind'", "jobs.csv, 'frame,kid\na,plug\n'"})
    void aFileRefusedAsAWholeLeavesNothingBehind(String name, String text) throws IOException {
        Path jobs = write(name, text.getBytes(UTF_8));
        Ran ran = batch(jobs, "--out", out());
        assertEquals(BatchCommand.NOT_ENDED, ran.code());
        assertTrue(ran.err().startsWith(jobs + ": "), ran.err());
        assertTrue(ran.err().lines().count() > 1, ran.err());
        assertEquals(Set.of(name), names());
    }

    @ParameterizedTest
    @EnumSource
    void aBadFileIsToldAsOverHttp(BadFile file) throws IOException {
        String name = "bad." + file.form().name().toLowerCase();
        Path jobs = write(name, file.bytes());
        Ran ran = batch(jobs, "--out", out());
        if (file.isRefusedWhole()) {
            assertEquals(BatchCommand.NOT_ENDED, ran.code());
            assertTrue(ran.err().startsWith(jobs + ": "), ran.err());
            assertEquals(Set.of(name), names());
        } else {
            assertGoneOn(file, ran);
        }
    }

    private void assertGoneOn(BadFile file, Ran ran) throws IOException {
        assertEquals(file.refused() == 0 ? 0 : BatchCommand.SOME_REFUSED, ran.code(), ran.err());
        WrittenResults written = written(Form.NDJSON);
        assertTrue(written.complete());
        assertEquals(file.done(), written.counts().done());
        assertEquals(file.refused(), written.counts().refused());
        List<String> keys = new ArrayList<>();
        for (String line : Files.readAllLines(out())) {
            JsonNode key = JSON.readTree(line).at("/problem/violations/0/key");
            if (!key.isMissingNode()) {
                keys.add(key.textValue());
            }
        }
        assertEquals(file.key() == null ? List.of() : List.of(file.key()), keys);
    }

    @Test
    void badSettingsAreToldBeforeAnythingIsWritten() throws IOException {
        Path jobs = jobs(Form.NDJSON, 2, 0);
        Path settings = write("s.json", "{\"arc\": {\"curent\": \"80 A\"}}".getBytes(UTF_8));
        Ran ran = batch(jobs, "--out", out(), "--settings", settings);
        assertEquals(BatchCommand.NOT_ENDED, ran.code());
        assertTrue(ran.err().contains("curent"), ran.err());
        Ran missing = batch(jobs, "--out", out(), "--settings", directory.resolve("none.json"));
        assertEquals(BatchCommand.NOT_ENDED, missing.code());
        assertTrue(missing.err().contains("none.json: no such file"), missing.err());
        assertFalse(Files.exists(out()));
    }

    @Test
    void whatIsWrongWithTheOptionsIsTold() throws IOException {
        Path jobs = jobs(Form.NDJSON, 2, 0);
        Path unnamed = Files.copy(jobs, directory.resolve("jobs.txt"));
        refuses("--input-form", unnamed, "--out", out());
        refuses("--input-form", "-", "--out", out());
        refuses("--workers", jobs, "--out", out(), "--workers", "0");
        refuses("--workers", jobs, "--out", out(), "--workers", "257");
        refuses("--resume", "-", "--input-form", "csv", "--out", out(), "--resume");
        refuses("--out", jobs);
        refuses("--units", jobs, "--out", out(), "--units", "metric");
        refuses("no such file", directory.resolve("none.csv"), "--out", out());
        refuses("no such file", jobs, "--out", directory.resolve("none/results"));
        assertEquals(Set.of("jobs.ndjson", "jobs.txt"), names());
    }

    private static void refuses(String words, Object... command) {
        Ran ran = batch(command);
        assertEquals(BatchCommand.NOT_ENDED, ran.code(), ran.err());
        assertTrue(ran.err().contains(words), ran.err());
    }

    @Test
    void theBarIsForATerminalOnly() throws IOException {
        Path jobs = jobs(Form.NDJSON, 4, 0);
        assertFalse(batch(jobs, "--out", directory.resolve("piped")).err().contains("\r"));
        System.setProperty(Terminal.PROPERTY, "true");
        try {
            Ran ran = batch(jobs, "--out", directory.resolve("seen"));
            assertTrue(ran.err().startsWith("\r["), ran.err());
            assertTrue(ran.err()
                    .endsWith("\r" + jobs + ": 4 frames read, 4 done, 0 refused; the results are in "
                            + directory.resolve("seen") + System.lineSeparator()));
        } finally {
            System.clearProperty(Terminal.PROPERTY);
        }
    }

    @Test
    void theHelpTellsTheExitCodes() {
        Ran ran = batch("--help");
        assertEquals(0, ran.code());
        assertTrue(ran.out().contains("Exit code:"), ran.out());
        assertTrue(ran.out().contains("some frames were refused"), ran.out());
    }
}
