package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every field of the sample in every wrong shape, and a field nobody knows in every part: each told at its path. */
class WrongShapesTest {

    /** Where a joint's kind stands among its fields must not matter to the paths. */
    enum KindStands {
        FIRST(joint -> move(joint, true)),
        LAST(joint -> move(joint, false)),
        AS_WRITTEN(joint -> {});

        private final Consumer<ObjectNode> order;

        KindStands(Consumer<ObjectNode> order) {
            this.order = order;
        }

        private static void move(ObjectNode joint, boolean first) {
            ObjectNode copy = joint.deepCopy();
            JsonNode kind = copy.remove("kind");
            joint.removeAll();
            if (first) {
                joint.set("kind", kind);
            }
            joint.setAll(copy);
            if (!first) {
                joint.set("kind", kind);
            }
        }

        RequestTree sample() {
            RequestTree sample = RequestTree.sample()
                    .put(
                            "prices.otherWork",
                            "[{\"item\": \"jig\", \"quantity\": \"2 h\", \"rate\": \"55/h\"}, {\"item\": \"paint\", \"amount\": \"9\"}]")
                    .put("frame.joints[1].backPurge", "{\"flow\": \"5 L/min\", \"time\": \"30 s\"}")
                    .put("frame.joints[1].arc", "{\"current\": \"80 A\"}");
            RequestTree whole = RequestTree.of(sample.text());
            whole.at("frame.joints").forEach(joint -> order.accept((ObjectNode) joint));
            return whole;
        }
    }

    private static Stream<String> paths(JsonNode node, String path) {
        List<String> paths = new ArrayList<>();
        if (!path.isEmpty()) {
            paths.add(path);
        }
        node.properties()
                .forEach(field -> paths(field.getValue(), path.isEmpty() ? field.getKey() : path + "." + field.getKey())
                        .forEach(paths::add));
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            paths(node.get(i), path + "[" + i + "]").forEach(paths::add);
        }
        return paths.stream();
    }

    @ParameterizedTest
    @EnumSource
    void aStructureWhereAValueIsDue(KindStands kind) {
        long looked = paths(kind.sample().root(), "")
                .filter(path -> kind.sample().at(path).isValueNode() && !path.endsWith(".kind"))
                // an object there is an analysis
                .filter(path -> !path.endsWith("steel.base"))
                .peek(path -> Stream.of("{}", "{\"a\": [1, {\"b\": 2}]}", "[]", "[1, 2]")
                        .forEach(raw -> refusedAt(kind, path, raw, "a single value is due here")))
                .count();
        assertTrue(looked > 80, looked + " values");
    }

    @ParameterizedTest
    @EnumSource
    void anythingElseWhereAnObjectIsDue(KindStands kind) {
        long looked = paths(kind.sample().root(), "")
                .filter(path -> kind.sample().at(path).isObject())
                .peek(path -> Stream.of("\"\"", "\" \"", "\"x\"", "1", "1.5", "true", "false", "[]", "[{}]")
                        .forEach(raw -> refusedAt(kind, path, raw, "an object is due here")))
                .count();
        assertTrue(looked > 25, looked + " parts");
    }

    @ParameterizedTest
    @EnumSource
    void anythingElseWhereAListIsDue(KindStands kind) {
        for (String path : List.of("frame.joints", "prices.otherWork")) {
            for (String raw : List.of("\"\"", "\" \"", "\"x\"", "1", "1.5", "true", "{}", "{\"a\": 1}")) {
                refusedAt(kind, path, raw, "a list is due here");
            }
        }
    }

    private static void refusedAt(KindStands kind, String path, String raw, String message) {
        ProblemReport problem = kind.sample().put(path, raw).refused();
        assertEquals(List.of("wrong-shape " + path), BadInputTest.told(problem), path + " = " + raw);
        assertEquals(422, problem.status());
        assertEquals(message, problem.violations().get(0).message(), path + " = " + raw);
        BadInputTest.inPlainWords(problem);
    }

    @ParameterizedTest
    @EnumSource
    void aFieldNobodyKnows(KindStands kind) {
        long looked = Stream.concat(Stream.of(""), paths(kind.sample().root(), ""))
                .filter(path -> path.isEmpty() || kind.sample().at(path).isObject())
                .peek(path -> Stream.of("1", "null", "{\"deep\": [{}]}", "[]").forEach(raw -> {
                    String field = path.isEmpty() ? "colour" : path + ".colour";
                    ProblemReport problem = kind.sample().put(field, raw).refused();
                    assertEquals(List.of("unknown-field " + field), BadInputTest.told(problem), raw);
                    assertTrue(!problem.violations().get(0).taken().isEmpty(), field);
                }))
                .count();
        assertTrue(looked > 25, looked + " parts");
    }

    @ParameterizedTest
    @EnumSource
    void aFieldMistypedByOneLetterIsToldWithItsRightName(KindStands kind) {
        long looked = paths(kind.sample().root(), "")
                .filter(path -> !path.endsWith("]") && !path.endsWith(".kind"))
                .peek(path -> {
                    RequestTree request = kind.sample();
                    String value = request.at(path).toString();
                    Violation told = request.drop(path).put(path + "s", value).refused().violations().stream()
                            .filter(violation -> violation.key().equals("unknown-field"))
                            .findFirst()
                            .orElseThrow();
                    assertEquals(path + "s", told.path());
                    String name = path.substring(path.lastIndexOf('.') + 1);
                    assertEquals("no such field here; the nearest is \"" + name + "\"", told.message());
                })
                .count();
        assertTrue(looked > 100, looked + " fields");
    }
}
