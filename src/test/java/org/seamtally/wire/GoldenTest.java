package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamtally.quantity.UnitSystem;

/**
 * Pinned: requests and their answers as they once were, replayed. Answers may gain fields and lose none, and what is
 * there stays as it is. A request is {@code DOOR.NAME.UNITS.request.json}, its answer beside it {@code
 * DOOR.NAME.UNITS.answer.json}.
 *
 * <p>Where an answer is meant to change: {@code mvn test -Dtest=GoldenTest -Dseamtally.golden=refresh} writes all of them
 * anew and fails, so that no run can pass unnoticed that way; the difference is then to be read and committed.
 */
class GoldenTest {

    private static final Path FOLDER = Path.of("src/test/resources/golden");
    private static final String REQUEST = ".request.json";

    /** Sine and power differ in their last bits from one Java version to the next; some figures are shown to nine digits. */
    private static final double LAST_DIGITS = 1e-8;

    /** One door, called as the service and the shell call it. */
    interface Door {
        Outcome<?> answer(Engine engine, ByteArrayInputStream body, UnitSystem units) throws IOException;
    }

    static final Map<String, Door> DOORS = Map.of(
            "frame-estimates", Engine::frameEstimate,
            "frame-totals", (engine, body, units) -> engine.frameTotals(body, units, OptionalInt.of(1)),
            "deposits", Engine::deposit,
            "arc-times", Engine::arcTime,
            "preheats", Engine::preheat,
            "gas-losses", Engine::gasLoss,
            "gas-setup-comparisons", Engine::comparison,
            "steel-reviews", Engine::steelReview);

    static List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(REQUEST))
                    .map(file -> file.substring(0, file.length() - REQUEST.length()))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everyDoorIsPinnedWithAnAnswerAndWithAProblem() throws IOException {
        for (String door : DOORS.keySet()) {
            assertTrue(names().stream().anyMatch(name -> name.startsWith(door + ".")), door);
        }
        assertTrue(names().stream().anyMatch(name -> name.contains(".refused.")));
        assertTrue(names().stream().anyMatch(name -> name.endsWith(".us")));
    }

    @ParameterizedTest
    @MethodSource("names")
    void answersAsItDid(String name) throws IOException {
        String[] parts = name.split("\\.");
        Outcome<?> outcome = DOORS.get(parts[0])
                .answer(
                        new Engine("golden"),
                        new ByteArrayInputStream(Files.readAllBytes(FOLDER.resolve(name + REQUEST))),
                        UnitSystem.of(parts[2]));
        Object told = outcome instanceof Outcome.Refused<?> refused
                ? refused.problem()
                : ((Outcome.Answered<?>) outcome).answer();
        assertEquals(parts[1].startsWith("refused"), outcome instanceof Outcome.Refused<?>, name);
        JsonNode answer = RequestTree.parse(RequestTree.json(told));
        // what computed it is no part of what was computed
        ((ObjectNode) answer).remove("engine");
        Path file = FOLDER.resolve(name + ".answer.json");
        boolean refresh = "refresh".equals(System.getProperty("seamtally.golden"));
        if (refresh) {
            Files.writeString(
                    file, answer.toPrettyString().replace(System.lineSeparator(), "\n") + "\n", StandardCharsets.UTF_8);
        }
        assertFalse(refresh, file + " is written anew: read the difference and run without refreshing");
        Answers.assertHolds(RequestTree.parse(Files.readString(file)), answer, LAST_DIGITS);
    }

    @Test
    void aFieldMoreIsNoChangeAndOneLessIs() {
        JsonNode pinned = RequestTree.parse("{\"a\": [{\"b\": 1.00000001}], \"c\": \"d\"}");
        ObjectNode more = (ObjectNode) RequestTree.parse("{\"a\": [{\"b\": 1.00000002, \"new\": 1}], \"c\": \"d\"}");
        Answers.assertHolds(pinned, more, 2e-8);
        for (String other : List.of(
                "{\"a\": [{\"b\": 1.0001}], \"c\": \"d\"}",
                "{\"a\": [{\"b\": 1.00000001}]}",
                "{\"a\": [{\"b\": 1.00000001}, {}], \"c\": \"d\"}",
                "{\"a\": [{\"b\": \"1.00000001\"}], \"c\": \"d\"}",
                "{\"a\": [{\"b\": 1.00000001}], \"c\": \"e\"}")) {
            org.junit.jupiter.api.Assertions.assertThrows(
                    AssertionError.class,
                    () -> Answers.assertHolds(pinned, RequestTree.parse(other), LAST_DIGITS),
                    other);
        }
    }
}
