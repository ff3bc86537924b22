package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamtally.quantity.UnitSystem;

/** A frame in brief says what the whole answer says. */
class FrameTotalsTest {

    private final Engine engine = new Engine("test");

    static Stream<Path> frames() throws IOException {
        return Files.list(Path.of("sample-jobs"))
                .filter(file -> file.toString().endsWith(".json"))
                .filter(file -> {
                    try {
                        return RequestTree.parse(Files.readString(file)).has("frame");
                    } catch (IOException e) {
                        throw new IllegalStateException(file.toString(), e);
                    }
                })
                .sorted();
    }

    @ParameterizedTest
    @MethodSource("frames")
    void allThatIsInBriefStandsInTheWholeAnswer(Path file) throws IOException {
        byte[] request = Files.readAllBytes(file);
        JsonNode whole = tree(engine.frameEstimate(new ByteArrayInputStream(request), UnitSystem.US));
        int count = whole.path("joints").size();
        JsonNode brief =
                tree(engine.frameTotals(new ByteArrayInputStream(request), UnitSystem.US, OptionalInt.of(count)));
        Set<String> same = new HashSet<>();
        whole.fieldNames().forEachRemaining(same::add);
        same.removeAll(List.of("joints", "cautions"));
        for (String name : same) {
            assertEquals(whole.path(name), brief.path(name), name);
        }
        assertEquals(whole.path("joints").path(count - 1), brief.path("joint"));
        assertEquals(count, brief.path("joints").size());
        for (int i = 0; i < count; i++) {
            JsonNode joint = whole.path("joints").path(i);
            JsonNode line = brief.path("joints").path(i);
            assertEquals(joint.path("mark"), line.path("mark"));
            assertEquals(joint.path("count"), line.path("count"));
            assertEquals(joint.at("/seam/length"), line.path("seamLength"));
            assertEquals(joint.at("/filler/consumed"), line.path("filler"));
            assertEquals(joint.at("/arc/time"), line.path("arcTime"));
            assertEquals(joint.at("/gas/total"), line.path("gas"));
        }
        assertEquals(causesOfWhole(whole), causesOfBrief(brief));
        assertEquals(worst(whole), texts(brief, true));
        List<String> frames = new ArrayList<>();
        whole.path("cautions")
                .forEach(caution -> frames.add(caution.path("text").asText()));
        assertEquals(frames, texts(brief, false));
    }

    /** What is printed for people, in its order. */
    private static List<String> worst(JsonNode whole) {
        return GatheredCaution.ofJoints(
                        FrameEstimateAnswer.read(new JsonText(whole.toString().getBytes(StandardCharsets.UTF_8))))
                .stream()
                .map(GatheredCaution::text)
                .toList();
    }

    private static List<String> texts(JsonNode brief, boolean ofJoints) {
        List<String> texts = new ArrayList<>();
        brief.path("cautions").forEach(caution -> {
            if (caution.has("joints") == ofJoints) {
                texts.add(caution.path("text").asText());
            }
        });
        return texts;
    }

    /** Each joint with the causes of its cautions: none is lost, and none comes to another joint. */
    private static Set<String> causesOfWhole(JsonNode whole) {
        Set<String> all = new TreeSet<>();
        for (JsonNode joint : whole.path("joints")) {
            String mark = joint.path("mark").asText();
            joint.path("cautions")
                    .forEach(caution ->
                            all.add(mark + " " + caution.path("cause").asText()));
        }
        return all;
    }

    private static Set<String> causesOfBrief(JsonNode brief) {
        Set<String> all = new TreeSet<>();
        for (JsonNode caution : brief.path("cautions")) {
            caution.path("joints")
                    .forEach(mark ->
                            all.add(mark.asText() + " " + caution.path("cause").asText()));
        }
        return all;
    }

    @ParameterizedTest
    @EnumSource(UnitSystem.class)
    void noJointIsInFullWhereNoneIsAskedFor(UnitSystem units) throws IOException {
        JsonNode brief = tree(
                engine.frameTotals(new ByteArrayInputStream(request("smallest.json")), units, OptionalInt.empty()));
        assertFalse(brief.has("joint"));
        assertEquals(
                units == UnitSystem.SI ? "mm" : "in",
                brief.at("/joints/0/seamLength/unit").asText());
    }

    @Test
    void aJointThatIsNotThereIsRefusedWithWhatIsTaken() throws IOException {
        Outcome<?> outcome = engine.frameTotals(
                new ByteArrayInputStream(request("smallest.json")), UnitSystem.SI, OptionalInt.of(2));
        ProblemReport problem = ((Outcome.Refused<?>) outcome).problem();
        assertEquals(400, problem.status());
        assertEquals("joint", problem.violations().get(0).path());
        assertEquals(
                "joint is a joint's place from 1 to 1",
                problem.violations().get(0).message());
    }

    @Test
    void whatTheFrameRefusesIsRefusedAlike() throws IOException {
        byte[] bad = "{\"frame\": {\"joints\": []}}".getBytes(StandardCharsets.UTF_8);
        Outcome<?> whole = engine.frameEstimate(new ByteArrayInputStream(bad), UnitSystem.SI);
        Outcome<?> brief = engine.frameTotals(new ByteArrayInputStream(bad), UnitSystem.SI, OptionalInt.empty());
        assertEquals(((Outcome.Refused<?>) whole).problem(), ((Outcome.Refused<?>) brief).problem());
    }

    /** What it is for. */
    @Test
    void aLongFrameIsASeventhOfTheTextAtMost() throws IOException {
        StringBuilder joints = new StringBuilder();
        IntStream.range(0, 150)
                .forEach(i -> joints.append(i == 0 ? "" : ",")
                        .append(("{\"kind\": \"tube-to-tube\", \"branch\": {\"outsideDiameter\": \"%.1f mm\","
                                        + " \"wall\": \"2 mm\"}, \"main\": {\"outsideDiameter\": \"60 mm\","
                                        + " \"wall\": \"2 mm\"}, \"angle\": \"%d deg\"}")
                                .formatted(25 + i * 0.1, 45 + i % 45)));
        byte[] request = ("{\"frame\": {\"joints\": [" + joints + "]}}").getBytes(StandardCharsets.UTF_8);
        int whole = text(engine.frameEstimate(new ByteArrayInputStream(request), UnitSystem.SI));
        int brief = text(engine.frameTotals(new ByteArrayInputStream(request), UnitSystem.SI, OptionalInt.of(7)));
        assertTrue(brief * 7 < whole, brief + " bytes of " + whole);
    }

    private static int text(Outcome<?> outcome) {
        return Json.bytes(((Outcome.Answered<?>) outcome).answer()).length;
    }

    private static byte[] request(String name) throws IOException {
        return Files.readAllBytes(Path.of("sample-jobs", name));
    }

    private static JsonNode tree(Outcome<?> outcome) {
        return RequestTree.parse(RequestTree.json(((Outcome.Answered<?>) outcome).answer()));
    }
}
