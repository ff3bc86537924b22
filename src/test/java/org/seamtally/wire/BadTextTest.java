package org.seamtally.wire;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;

/** Bodies that are not JSON, or not an object: what is said of them, and where. */
class BadTextTest {

    private static final String SAMPLE = RequestTree.sample().text();

    /** A body that cannot be read as JSON: one violation, without a path, with the line and column. */
    record Text(String about, byte[] body, String key) {
        @Override
        public String toString() {
            return about;
        }
    }

    private static Text text(String about, String body) {
        return new Text(about, body.getBytes(UTF_8), "not-json");
    }

    private static Text text(String about, String body, String key) {
        return new Text(about, body.getBytes(UTF_8), key);
    }

    static Stream<Text> unreadable() {
        return Stream.of(
                text("nothing", ""),
                text("blanks", " \n\t "),
                text("not a number", SAMPLE.replace("\"quantity\":6", "\"quantity\":NaN")),
                text("infinity", SAMPLE.replace("\"quantity\":6", "\"quantity\":-Infinity")),
                text("a leading zero", SAMPLE.replace("\"quantity\":6", "\"quantity\":06")),
                text("a plus", SAMPLE.replace("\"quantity\":6", "\"quantity\":+6")),
                text("a hexadecimal number", SAMPLE.replace("\"quantity\":6", "\"quantity\":0x6")),
                text("a comment", SAMPLE.replace("{\"frame\"", "{/* the frame */\"frame\"")),
                text("a line comment", "// a frame\n" + SAMPLE),
                text("a trailing comma", SAMPLE.replace("\"quantity\":6", "\"quantity\":6,,")),
                text("single quotes", SAMPLE.replace('"', '\'')),
                text("bare names", "{frame: {}}"),
                text("a raw line break in a string", SAMPLE.replace("rear bay", "rear\nbay")),
                text("something after it", SAMPLE + " true"),
                text("a second one after it", SAMPLE + SAMPLE),
                text("a bracket after it", SAMPLE + "}"),
                text("words", "a frame, please"),
                text("markup", "<frame/>"),
                text("a field twice", "{\"frame\": {}, \"frame\": {}}", "duplicate"),
                text("a field of a joint twice", SAMPLE.replace("\"tacks\":2", "\"tacks\":2,\"tacks\":2"), "duplicate"),
                text(
                        "a field twice before the kind",
                        "{\"frame\": {\"joints\": [{\"tacks\": 1, \"tacks\": 1, \"kind\": \"plug\"}]}}",
                        "duplicate"),
                text(
                        "a kind twice",
                        "{\"frame\": {\"joints\": [{\"kind\": \"plug\", \"kind\": \"plug\"}]}}",
                        "duplicate"),
                text("an unknown field's field twice", "{\"x\": {\"a\": 1, \"a\": 1}}", "duplicate"),
                text("100 levels of lists", "[".repeat(100) + "]".repeat(100), "too-deep"),
                text("100 levels of objects", "{\"frame\":".repeat(100) + "1" + "}".repeat(100), "too-deep"),
                text("100 levels in a joint", inJoint("[".repeat(100) + "]".repeat(100)), "too-deep"),
                text("100 levels before the kind", beforeKind("[".repeat(100) + "]".repeat(100)), "too-deep"),
                text(
                        "100 levels in a value",
                        SAMPLE.replace("\"7\"", "1").replace("\"90 A\"", "[".repeat(100)),
                        "too-deep"),
                text("100 000 levels", "[".repeat(100_000), "too-deep"),
                text("100 000 levels in a joint", inJoint("{\"a\":".repeat(100_000)), "too-deep"),
                text(
                        "a number of 2000 digits",
                        SAMPLE.replace("\"quantity\":6", "\"quantity\":" + "6".repeat(2000)),
                        "too-long"),
                text("a name of 60 000 letters", "{\"" + "x".repeat(60_000) + "\": 1}", "too-long"),
                text("a name of 60 000 letters in a joint", inJoint("{\"" + "x".repeat(60_000) + "\": 1}"), "too-long"),
                new Text("not UTF-8", SAMPLE.replace("rear", "r\u00e9ar").getBytes(ISO_8859_1), "not-json"),
                new Text("a cut letter", bytes(SAMPLE, 0xC3), "not-json"),
                new Text("zeros", new byte[64], "not-json"),
                new Text(
                        "zeros and a brace, as if of four bytes a letter",
                        new byte[] {0, 0, 0, '{', -1, -1, -1, -1},
                        "not-json"),
                new Text("a mark of four bytes a letter", new byte[] {0, 0, -2, -1, 127, -1, -1, -1}, "not-json"),
                new Text("a compressed body", new byte[] {31, -117, 8, 0, 0, 0, 0, 0, 0, 3}, "not-json"));
    }

    private static byte[] bytes(String text, int last) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(text.substring(0, text.indexOf("rear")).getBytes(UTF_8));
        all.write(last);
        return all.toByteArray();
    }

    private static String inJoint(String value) {
        return "{\"frame\": {\"joints\": [{\"kind\": \"plug\", \"branch\": " + value + "}]}}";
    }

    private static String beforeKind(String value) {
        return "{\"frame\": {\"joints\": [{\"branch\": " + value + ", \"kind\": \"plug\"}]}}";
    }

    @ParameterizedTest
    @MethodSource("unreadable")
    void isToldInOneViolationWithItsPlace(Text bad) {
        ProblemReport problem = RequestTree.refused(bad.body());
        assertEquals(400, problem.status());
        assertEquals("/problems/not-json", problem.type());
        assertEquals(List.of(bad.key() + " "), BadInputTest.told(problem));
        assertTrue(
                problem.violations()
                        .get(0)
                        .message()
                        .matches("[^\n]*, at line \\d+, column \\d+|the text is not UTF-8"),
                problem.violations().get(0).message());
        BadInputTest.inPlainWords(problem);
    }

    @Test
    void theSampleCutOffAnywhereIsNoJson() {
        byte[] whole = SAMPLE.getBytes(UTF_8);
        for (int length = 0; length < whole.length; length += 7) {
            ProblemReport problem = RequestTree.refused(java.util.Arrays.copyOf(whole, length));
            assertEquals(400, problem.status(), "cut after " + length);
            assertEquals(List.of("not-json "), BadInputTest.told(problem), "cut after " + length);
        }
    }

    @Test
    void thePlaceIsTheFaultsOwn() {
        Violation violation = RequestTree.refused("{\n  \"frame\": {\n    \"joints\": oops\n}}".getBytes(UTF_8))
                .violations()
                .get(0);
        assertTrue(violation.message().contains("at line 3, column "), violation.message());
    }

    @ParameterizedTest
    @ValueSource(strings = {"[]", "[{}]", "\"frame\"", "\"\"", "12", "1.5", "true", "false", "[[[[]]]]"})
    void anythingButAnObjectHasTheWrongShape(String body) {
        ProblemReport problem = RequestTree.refused(body.getBytes(UTF_8));
        assertEquals(422, problem.status());
        assertEquals(List.of("wrong-shape "), BadInputTest.told(problem));
        BadInputTest.inPlainWords(problem);
    }

    @Test
    void nullIsMissingAndAnEmptyObjectLacksItsFrame() {
        assertEquals(List.of("missing "), BadInputTest.told(RequestTree.refused("null".getBytes(UTF_8))));
        assertEquals(List.of("missing frame"), BadInputTest.told(RequestTree.refused("{}".getBytes(UTF_8))));
        assertEquals(
                List.of("missing frame.joints"),
                BadInputTest.told(RequestTree.refused("{\"frame\": {}}".getBytes(UTF_8))));
    }

    /** RFC 8259, section 8.1: a reader may ignore a byte order mark. */
    @Test
    void aByteOrderMarkAndBlanksAroundAreIgnored() {
        for (String body : List.of("\uFEFF" + SAMPLE, "\r\n " + SAMPLE + " \r\n")) {
            assertInstanceOf(Outcome.Answered.class, RequestTree.send(body.getBytes(UTF_8), UnitSystem.SI));
        }
    }

    @Test
    void fiftyLevelsAreReadAndOneMoreIsNot() {
        String deepest = "[".repeat(Json.DEEPEST - 1) + "]".repeat(Json.DEEPEST - 1);
        assertEquals(
                List.of("unknown-field x", "missing frame").stream().sorted().toList(),
                BadInputTest.told(RequestTree.refused(("{\"x\": " + deepest + "}").getBytes(UTF_8))).stream()
                        .sorted()
                        .toList());
        assertEquals(
                List.of("too-deep "),
                BadInputTest.told(RequestTree.refused(("{\"x\": [" + deepest + "]}").getBytes(UTF_8))));
    }

    /** What is quoted back is JSON that anybody can read, wherever a text of letters beyond 16 bits was cut. */
    @Test
    void whatIsQuotedIsCutBetweenLetters() throws Exception {
        String face = "\uD83D\uDE00";
        for (String lead : List.of("", "x")) {
            ProblemReport problem = RequestTree.sample()
                    .put("gas.flow", "\"" + lead + face.repeat(60) + "\"")
                    .put("frame.joints[0].kind", "\"" + lead + face.repeat(60) + "\"")
                    .put("frame.joints[1]." + lead + face.repeat(60), "1")
                    .put("steel.base", "\"" + lead + face.repeat(60) + "\"")
                    .put("gas.mixture", "\"\\udc00\"")
                    .refused();
            assertEquals(5, problem.violations().size());
            for (Violation violation : problem.violations()) {
                for (String shown : List.of(violation.path(), violation.message(), violation.given())) {
                    assertTrue(UTF_8.newEncoder().canEncode(shown), violation.path() + ": " + shown.length());
                }
            }
            assertEquals(problem, Json.mapper().readValue(RequestTree.json(problem), ProblemReport.class));
        }
    }
}
