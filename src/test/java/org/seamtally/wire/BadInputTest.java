package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is refused, at which path and under which key; all of it at once, in the words of the trade alone. */
class BadInputTest {

    private static final Pattern PARTS = Pattern.compile("\\bLeaf\\b|[a-z]Request\\b");

    private static final String J0 = "frame.joints[0]";

    /**
     * Fields of the sample changed, and what must be said of them.
     *
     * @param edits path and raw text; null: left out
     * @param told {@code "key path"}, in the order of the paths; none where it fits
     */
    record Case(List<String[]> edits, List<String> told) {

        Case and(String path, String raw) {
            List<String[]> more = new ArrayList<>(edits);
            more.add(new String[] {path, raw});
            return new Case(more, told);
        }

        Case told(String... keyAndPath) {
            return new Case(edits, List.of(keyAndPath));
        }

        RequestTree request() {
            RequestTree request = RequestTree.sample();
            for (String[] edit : edits) {
                if (edit[1] == null) {
                    request.drop(edit[0]);
                } else {
                    request.put(edit[0], edit[1]);
                }
            }
            return request;
        }

        @Override
        public String toString() {
            return edits.stream()
                    .map(edit -> edit[0] + " = " + (edit[1] == null ? "left out" : start(edit[1])))
                    .collect(Collectors.joining(", "));
        }

        private static String start(String raw) {
            return raw.length() > 60 ? raw.substring(0, 60) + "…" : raw;
        }
    }

    private static Case edit(String path, String raw) {
        return new Case(List.<String[]>of(new String[] {path, raw}), List.of());
    }

    private static Case one(String path, String raw, String key) {
        return edit(path, raw).told(key + " " + path);
    }

    static Stream<Case> quantities() {
        return Stream.of(
                one(J0 + ".branch.wall", "0.095", "unit-missing"),
                one(J0 + ".branch.wall", "\"0.095\"", "unit-missing"),
                one(J0 + ".branch.wall", "\"0.095 furlong\"", "unit-unknown"),
                one(J0 + ".branch.wall", "\"5 psi\"", "unit-of-another-kind"),
                one("gas.supplyGaugePressure", "\"50 mm\"", "unit-of-another-kind"),
                one("gas.flow", "15", "unit-missing"),
                one("gas.flow", "\"NaN L/min\"", "number-not-finite"),
                one("gas.flow", "\"1e999 L/min\"", "number-not-finite"),
                one("gas.flow", "1e999", "number-not-finite"),
                one("gas.flow", "\"-7 L/min\"", "out-of-range"),
                one("gas.flow", "\"0 L/min\"", "out-of-range"),
                one("gas.flow", "\"\"", "empty"),
                one("gas.flow", "\"7,5 L/min\"", "number-malformed"),
                one("gas.flow", "true", "not-text"),
                one("gas.temperature", "\"-300 degC\"", "number-out-of-physics"),
                one("arc.current", "\"4.999 A\"", "out-of-range"),
                one("arc.current", "\"500.001 A\"", "out-of-range"),
                one("arc.current", "\"1e-999999999 A\"", "number-not-finite"),
                one(J0 + ".angle", "\"0 deg\"", "out-of-range"),
                one(J0 + ".angle", "\"180 deg\"", "out-of-range"),
                one(J0 + ".angle", "\"19.999 deg\"", "out-of-range"),
                one(J0 + ".angle", "\"160.001 deg\"", "out-of-range"),
                one(J0 + ".fillet.leg", "\"0 mm\"", "out-of-range"),
                one(J0 + ".fillet.rootGap", "\"5.01 mm\"", "out-of-range"),
                one("frame.joints[2].length", "\"-1 in\"", "out-of-range"),
                one("frame.joints[4].holeDiameter", "\"1.9 mm\"", "out-of-range"),
                one("preheat.temperature", "\"601 degC\"", "out-of-range"),
                one("labour.fitUpPerJoint", "\"-1 s\"", "out-of-range"),
                one("gas.flow", "\"" + "9".repeat(1_000_000) + " L/min\"", "too-long"),
                one("gas.flow", "\"7\\u0000 L/min\"", "unit-unknown"));
    }

    static Stream<Case> numbersAndWords() {
        return Stream.of(
                one("frame.quantity", "0", "out-of-range"),
                one("frame.quantity", "-1", "out-of-range"),
                one("frame.quantity", "1000001", "out-of-range"),
                one("frame.quantity", "99999999999999999999", "out-of-range"),
                one("frame.quantity", "1.5", "not-whole"),
                one("frame.quantity", "1e3", "not-whole"),
                one("frame.quantity", "\"6\"", "not-a-number"),
                one("frame.quantity", "true", "not-a-number"),
                one(J0 + ".count", "0", "out-of-range"),
                one(J0 + ".tacks", "-1", "out-of-range"),
                one(J0 + ".segments", "0", "out-of-range"),
                one(J0 + ".preheated", "\"yes\"", "not-true-or-false"),
                one(J0 + ".preheated", "1", "not-true-or-false"),
                one(J0 + ".access", "0", "out-of-range"),
                one("steel.dilution", "1", "out-of-range"),
                one("steel.dilution", "0.99999999999999999999", "out-of-range"),
                one("steel.dilution", "\"0.3\"", "not-a-number"),
                one("steel.dilution", "-1e-2147483648", "out-of-range"),
                one("prices.overhead", "1e-2147483648", "out-of-range"),
                one("prices.overhead", "1e-2000000000", "out-of-range"),
                one("prices.overhead", "1e999", "out-of-range"),
                one("prices.overhead", "0.15000000000000000000000000000000000000000000000000001", "out-of-range"),
                one("prices.margin", "0.9", "out-of-range"),
                one("prices.margin", "-0.01", "out-of-range"),
                one("arc.arcEfficiency", "1.0001", "out-of-range"),
                one("arc.arcEfficiency", "1" + "0".repeat(900), "out-of-range"),
                one("steel.base", "\"4131\"", "unknown-word"),
                one("steel.base", "4130", "unknown-word"),
                one("filler.classification", "\"ER70S\"", "unknown-word"),
                one("gas.mixture", "\"helium-3\"", "unknown-word"),
                one("gas.meterAt", "\"mach\u0130ne\"", "unknown-word"),
                one("preheat.source", "\"coal\"", "unknown-word"),
                one("prices.currency", "\"DOLLARS\"", "unknown-word"),
                one("prices.currency", "\"\u0130NR\"", "unknown-word"),
                one("prices.currency", "\"\u212ARW\"", "unknown-word"),
                one("prices.currency", "\"XXX\"", "unknown-word"),
                one("prices.labour", "65", "unit-missing"),
                one("prices.labour", "\"65.00\"", "unit-missing"),
                one("prices.labour", "\"65.00/lb\"", "unit-of-another-kind"),
                one("prices.labour", "\"-65.00/h\"", "out-of-range"),
                one("prices.labour", "\"1000000001/h\"", "out-of-range"),
                one("prices.labour", "\"1e3/h\"", "number-malformed"),
                one("prices.minimumCharge", "250", "not-text"),
                one("prices.minimumCharge", "\"-250.00\"", "not-text"),
                one(J0 + ".kind", "\"tube-to-tub\"", "unknown-word"),
                one(J0 + ".kind", "null", "missing"),
                one(J0 + ".kind", "7", "unknown-word"),
                one(J0 + ".kind", "{\"is\": \"plug\"}", "missing"),
                one(J0 + ".kind", "[\"plug\"]", "missing"),
                one(J0 + ".kind", null, "missing"),
                one("frame.name", "\"  \"", "empty"),
                one("frame.name", "\"a\\u0007b\"", "not-text"),
                one("frame.name", "\"a\\u0085b\"", "not-text"),
                one("frame.name", "\"a\\ud800b\"", "not-text"),
                one("frame.name", "\"" + "x".repeat(201) + "\"", "too-long"),
                one("frame.name", "\"" + "x".repeat(1_000_000) + "\"", "too-long"),
                one("frame.name", "12", "not-text"),
                one(J0 + ".mark", "\"" + "m".repeat(41) + "\"", "too-long"),
                one(J0 + ".procedure", "\"\\n\"", "empty"));
    }

    static Stream<Case> fieldsThatDoNotFitOneAnother() {
        return Stream.of(
                one(J0 + ".branch.wall", "\"0.75 in\"", "contradiction"),
                one("frame.joints[1].branch.wall", "\"20 mm\"", "contradiction"),
                one(J0 + ".branch.outsideDiameter", "\"1.501 in\"", "contradiction"),
                one(J0 + ".offset", "\"1 mm\"", "contradiction"),
                one("frame.joints[3].branch.outsideDiameter", "\"1.261 in\"", "contradiction"),
                one("frame.joints[3].fillet.leg", "\"0.1201 in\"", "contradiction"),
                one("frame.joints[3].mark", "\"R1\"", "duplicate"),
                one("frame.joints[3].mark", "\"#1\"", "duplicate").and(J0 + ".mark", null),
                one(J0 + ".fillet.face.rise", "0.26", "out-of-range"),
                one(J0 + ".fillet.face.rise", null, "missing"),
                one(J0 + ".fillet.face.rise", "-1e-2147483648", "out-of-range"),
                edit(J0 + ".fillet.face.form", "\"flat\"").told("out-of-range " + J0 + ".fillet.face.rise"),
                edit(J0 + ".fillet.face", "{\"form\": \"concave\", \"rise\": 0.101}")
                        .told("out-of-range " + J0 + ".fillet.face.rise"),
                one("prices.markup", "0.25", "contradiction"),
                one("preheat.temperature", "\"67 degF\"", "out-of-range"),
                one("preheat.temperature", null, "missing"),
                one("preheat.sourcePower", "\"100 W\"", "source-too-weak"),
                edit(J0 + ".preheat", "{\"sourcePower\": \"100 W\"}")
                        .told("source-too-weak " + J0 + ".preheat.sourcePower"),
                one("filler.stubLength", "\"100 mm\"", "contradiction").and("filler.rodLength", "\"100 mm\""),
                edit("frame.joints[2].filler", "{\"rodLength\": \"100 mm\"}")
                        .and("filler.stubLength", "\"100 mm\"")
                        .told("contradiction frame.joints[2].filler.stubLength"),
                edit("prices.otherWork", "[{\"item\": \"jig\", \"amount\": \"5\", \"rate\": \"1/h\"}]")
                        .told("contradiction prices.otherWork[0].amount"),
                edit("prices.otherWork", "[{\"item\": \"jig\"}]")
                        .told("missing prices.otherWork[0].quantity", "missing prices.otherWork[0].rate"),
                edit("prices.otherWork", "[{\"item\": \"jig\", \"rate\": \"1/h\", \"quantity\": \"3 in\"}]")
                        .told("unit-of-another-kind prices.otherWork[0].quantity"),
                edit("prices.otherWork", "[{\"item\": \"jig\", \"rate\": \"1/h\", \"quantity\": \"-3 h\"}]")
                        .told("out-of-range prices.otherWork[0].quantity"),
                edit("prices.otherWork", "[{\"item\": \"jig\", \"rate\": \"1/h\", \"quantity\": 3}]")
                        .told("unit-missing prices.otherWork[0].quantity"));
    }

    static Stream<Case> listsAndParts() {
        return Stream.of(
                one("frame", null, "missing"),
                one("frame", "null", "missing"),
                one("frame.joints", null, "missing"),
                one("frame.joints", "[]", "empty"),
                one("frame.joints[1]", "null", "missing"),
                one("frame.joints[1].plate", "null", "missing"),
                one("frame.joints[1].plate.thickness", "null", "missing"),
                one("frame.joints[1].branch", null, "missing"),
                one("frame.joints[2].length", null, "missing"),
                one("frame.joints[3].sleeve", null, "missing"),
                one("frame.joints[4].depth", null, "missing"),
                one("prices.currency", null, "missing"),
                one("prices.otherWork", "[null]", "missing").told("missing prices.otherWork[0]"),
                edit(J0 + ".backPurge", "{}")
                        .told("missing " + J0 + ".backPurge.flow", "missing " + J0 + ".backPurge.time"),
                one("frame.joints[1]", "[\"plug\", {\"holeDiameter\": \"9 mm\", \"depth\": \"2 mm\"}]", "wrong-shape"));
    }

    /** What still fits: the last value of a range, a part that is null as if left out. */
    static Stream<Case> whatFits() {
        return Stream.of(
                edit("frame.joints[3].mark", "null"),
                edit("prices", "null"),
                edit("gas.hose", "null"),
                edit("prices.otherWork", "null"),
                edit("filler.stubLength", "\"99.9 mm\"").and("filler.rodLength", "\"100 mm\""),
                edit("frame.joints[3].fillet.leg", "\"0.12 in\""),
                edit("frame.joints[3].branch.outsideDiameter", "\"1.26 in\""),
                edit(J0 + ".angle", "\"20 deg\""),
                edit(J0 + ".angle", "\"160 deg\""),
                edit("preheat.temperature", "\"68 degF\""),
                edit("preheat.temperature", "\"600 degC\""),
                edit("preheat.temperature", "\"1112 degF\""),
                edit("prices.margin", "0.899999999999"),
                edit("steel.dilution", "0.999999999999"),
                edit(J0 + ".fillet.face", "{\"form\": \"CONCAVE\", \"rise\": 0.10}"),
                edit("prices.currency", "\"usd\""),
                edit("prices.overhead", "0"),
                edit("frame.quantity", "1000000"),
                edit("frame.name", "\"Überrollbügel, 2 m\""));
    }

    @ParameterizedTest
    @MethodSource({"quantities", "numbersAndWords", "fieldsThatDoNotFitOneAnother", "listsAndParts"})
    void isRefusedByPathAndKey(Case bad) {
        ProblemReport problem = bad.request().refused();
        assertEquals(422, problem.status());
        assertEquals("/problems/invalid", problem.type());
        assertEquals(bad.told(), told(problem));
        inPlainWords(problem);
    }

    @ParameterizedTest
    @MethodSource("whatFits")
    void isTaken(Case good) {
        assertTrue(good.request().estimate().path("joints").size() == 5);
    }

    @Test
    void everythingIsToldAtOnceInTheOrderOfThePaths() {
        ProblemReport problem = RequestTree.sample()
                .put("zebra", "1")
                .put("arc.current", "90")
                .put("frame.joints[0].branch.wall", "\"2 psi\"")
                .put("frame.joints[1].plate", "[]")
                .put("frame.joints[2].kind", "\"plate-filet\"")
                .put("frame.joints[3].mark", "\"R1\"")
                .put("frame.joints[4].hole", "\"1 mm\"")
                .drop("frame.joints[4].holeDiameter")
                .put("prices.markup", "0.3")
                .refused();
        assertEquals(
                List.of(
                        "unit-missing arc.current",
                        "unit-of-another-kind frame.joints[0].branch.wall",
                        "wrong-shape frame.joints[1].plate",
                        "unknown-word frame.joints[2].kind",
                        "duplicate frame.joints[3].mark",
                        "unknown-field frame.joints[4].hole",
                        "missing frame.joints[4].holeDiameter",
                        "contradiction prices.markup",
                        "unknown-field zebra"),
                told(problem));
        assertEquals("9 fields are not what is taken.", problem.detail());
    }

    @Test
    void pathsSortByTheirNumbers() {
        RequestTree request = RequestTree.of("{\"frame\": {\"joints\": []}}");
        for (int i = 0; i < 12; i++) {
            request.put("frame.joints[" + i + "]", "null");
        }
        assertEquals(
                IntStream.range(0, 12)
                        .mapToObj(i -> "missing frame.joints[" + i + "]")
                        .toList(),
                told(request.refused()));
    }

    @Test
    void theNearestWordIsOffered() {
        assertNearest("4130", "steel.base", "\"4131\"");
        assertNearest("4130", "steel.base", "4130");
        assertNearest("ER70S-2", "filler.classification", "\"ER70S2\"");
        assertNearest("tube-to-plate", "frame.joints[1].kind", "\"tube-to-plat\"");
        assertNearest("convex", "frame.joints[0].fillet.face.form", "\"convexe\"");
        assertNearest("outsideDiameter", "frame.joints[0].main.outsideDiametre", "\"1 in\"");
        assertNearest("holeDiameter", "frame.joints[4].holeDiametre", "\"1 in\"");
    }

    private static void assertNearest(String word, String path, String raw) {
        Violation violation =
                RequestTree.sample().put(path, raw).refused().violations().get(0);
        assertEquals(path, violation.path());
        assertTrue(violation.message().endsWith("the nearest is \"" + word + "\""), violation.message());
        assertTrue(violation.taken().contains(word), "taken: " + violation.taken());
    }

    @Test
    void aQuantityThatIsRefusedNamesTheUnitsTaken() {
        Violation violation = RequestTree.sample()
                .put("gas.supplyGaugePressure", "50")
                .refused()
                .violations()
                .get(0);
        assertEquals("50", violation.given());
        assertEquals(List.of("psi", "bar", "mbar", "Pa", "kPa", "MPa"), violation.taken());
        Violation outside = RequestTree.sample()
                .put("gas.supplyGaugePressure", "\"50 bar\"")
                .refused()
                .violations()
                .get(0);
        assertEquals("\"50 bar\"", outside.given());
        assertEquals("taken here: 0.2 bar to 20 bar (3 to 290 psi)", outside.message());
    }

    @Test
    void whatIsWrongWithAJointNamesItsMark() {
        List<Violation> read = RequestTree.sample()
                .put("frame.joints[1].branch.wall", "\"0.1 mm\"")
                .put("gas.flow", "\"0 L/min\"")
                .drop("frame.joints[3].mark")
                .put("frame.joints[3].tacks", "-1")
                .refused()
                .violations();
        assertEquals(
                List.of("frame.joints[1].branch.wall P1", "frame.joints[3].tacks null", "gas.flow null"),
                read.stream()
                        .map(violation -> violation.path() + " " + violation.joint())
                        .toList());
        // a branch of the main tube's size that lies beside its axis: what fits by itself and cannot be worked with
        Violation workedOut = RequestTree.sample()
                .put("frame.joints[0].offset", "\"30 mm\"")
                .refused()
                .violations()
                .get(0);
        assertTrue(workedOut.path().startsWith("frame.joints[0]"), workedOut.toString());
        assertEquals("R1", workedOut.joint());
    }

    @Test
    void tenThousandJointsAreTakenAndOneMoreIsNot() {
        String joint = "{\"kind\": \"plug\", \"holeDiameter\": \"9 mm\", \"depth\": \"2 mm\"}";
        assertEquals(
                10_000,
                RequestTree.frameOf((joint + ", ").repeat(9_999) + joint)
                        .estimate()
                        .path("perFrame")
                        .path("plugs")
                        .intValue());
        ProblemReport problem =
                RequestTree.frameOf((joint + ", ").repeat(10_000) + joint).refused();
        assertEquals(List.of("too-many frame.joints"), told(problem));
        assertEquals("10001 of them", problem.violations().get(0).given());
    }

    @Test
    void aBodyOfNothingButFaultsIsAnsweredInBounds() {
        String fields =
                IntStream.range(0, 50_000).mapToObj(i -> "\"x" + i + "\": 1").collect(Collectors.joining(", "));
        ProblemReport unknown = RequestTree.refused(("{" + fields + "}").getBytes(StandardCharsets.UTF_8));
        assertEquals(1000, unknown.violations().size());
        ProblemReport missing = RequestTree.frameOf("{\"kind\": \"plug\"}, ".repeat(4_999) + "{\"kind\": \"plug\"}")
                .refused();
        assertEquals(1000, missing.violations().size());
    }

    static List<String> told(ProblemReport problem) {
        return problem.violations().stream()
                .map(violation -> violation.key() + " " + violation.path())
                .toList();
    }

    /** Neither the program's own parts nor anybody's megabyte come back to the sender. */
    static void inPlainWords(ProblemReport problem) {
        String text = RequestTree.json(problem);
        for (String foreign :
                List.of("java.", "javax.", "org.seamtally", "fasterxml", "jackson", "Exception", "\tat ")) {
            assertFalse(text.contains(foreign), foreign + " in " + text);
        }
        assertFalse(PARTS.matcher(text).find(), text);
        for (Violation violation : problem.violations()) {
            assertTrue(violation.given() == null || violation.given().length() <= 70, violation.given());
            assertTrue(violation.message().length() <= 600, violation.message());
        }
    }
}
