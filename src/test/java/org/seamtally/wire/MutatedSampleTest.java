package org.seamtally.wire;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamtally.quantity.UnitSystem;

/**
 * Twenty thousand requests made from the sample by dropping, doubling, renaming, replacing and exchanging what is in it:
 * each is answered with finite numbers and lines that add up, or refused in plain words; none makes anything throw.
 */
class MutatedSampleTest {

    private static final long SEED = 20261124;
    private static final int BATCHES = 20;
    private static final int IN_A_BATCH = 1000;

    private static final Pattern RANGE =
            Pattern.compile("taken here: (.+?) to (?:below )?(.+?)(?:, with at most .*| \\(.*\\))?");

    /** What fields are replaced by, besides the ends of their ranges. */
    private static final List<String> REPLACEMENTS = List.of(
            "null",
            "true",
            "false",
            "0",
            "-0.0",
            "1",
            "-1",
            "0.5",
            "1e-7",
            "1e30",
            "12345678901234567890",
            "{}",
            "[]",
            "[null]",
            "\"\"",
            "\" \"",
            "\"0 mm\"",
            "\"1 mm\"",
            "\"-1 mm\"",
            "\"1e-30 in\"",
            "\"1e300 m\"",
            "\"1/3 in\"",
            "\"50 psi\"",
            "\"1 h\"",
            "\"argon\"",
            "\"helium\"",
            "\"NaN mm\"",
            "\"1/0 in\"",
            "\"\\u0000\"",
            "\"\\ud800\"",
            "\"plug\"",
            "\"tube-to-plate\"",
            "\"#2\"",
            "\"9.99/h\"",
            "\"9.99/lb\"",
            "\"JPY\"",
            "\"KWD\"",
            "\"electricity\"",
            "\"concave\"",
            "\"machine\"",
            "[[[[]]]]",
            "{\"kind\": \"plug\"}");

    private static final RequestTree WHOLE = WrongShapesTest.KindStands.AS_WRITTEN.sample();
    private static final Map<String, List<String>> ENDS = ends();

    /** The ends of each field's range, as the refusal of an absurd value tells them. */
    private static Map<String, List<String>> ends() {
        Map<String, List<String>> ends = new LinkedHashMap<>();
        for (String path : leaves(WHOLE.root(), "")) {
            JsonNode leaf = WHOLE.at(path);
            String unit = leaf.asText().replaceFirst("^[-0-9./]+ ?", "");
            String absurd = leaf.isNumber() ? "1e25" : "\"1e25 " + unit + "\"";
            Outcome<FrameEstimateAnswer> outcome =
                    RequestTree.send(fresh().put(path, absurd).text().getBytes(UTF_8), UnitSystem.SI);
            if (outcome instanceof Outcome.Refused<FrameEstimateAnswer> refused) {
                Matcher range =
                        RANGE.matcher(refused.problem().violations().get(0).message());
                if (range.matches()) {
                    String quote = leaf.isNumber() ? "" : "\"";
                    ends.put(path, List.of(quote + range.group(1) + quote, quote + range.group(2) + quote));
                }
            }
        }
        return ends;
    }

    static List<String> leaves(JsonNode node, String path) {
        List<String> paths = new ArrayList<>();
        if (node.isValueNode()) {
            paths.add(path);
        }
        node.properties()
                .forEach(field -> paths.addAll(
                        leaves(field.getValue(), path.isEmpty() ? field.getKey() : path + "." + field.getKey())));
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            paths.addAll(leaves(node.get(i), path + "[" + i + "]"));
        }
        return paths;
    }

    @Test
    void theRangesOfTheSampleAreKnown() {
        assertTrue(ENDS.size() > 45, ENDS.keySet().toString());
        assertEquals(List.of("\"20 deg\"", "\"160 deg\""), ENDS.get("frame.joints[0].angle"));
        assertEquals(List.of("0.2", "1"), ENDS.get("arc.arcEfficiency"));
    }

    /** Either end of each range by itself, and all the lower or all the upper ends of a part together. */
    @Test
    void bothEndsOfEveryRange() {
        for (int end = 0; end < 2; end++) {
            Map<String, RequestTree> parts = new LinkedHashMap<>();
            for (Map.Entry<String, List<String>> field : ENDS.entrySet()) {
                String value = field.getValue().get(end);
                judge(fresh().put(field.getKey(), value).text(), field.getKey() + " = " + value);
                String part = field.getKey().replaceAll("\\..*", "");
                parts.computeIfAbsent(part, p -> fresh()).put(field.getKey(), value);
            }
            int which = end;
            parts.forEach((part, request) -> judge(request.text(), part + ", ends " + which));
        }
    }

    private static RequestTree fresh() {
        return RequestTree.copy(WHOLE);
    }

    static Stream<Long> seeds() {
        return IntStream.range(0, BATCHES).mapToObj(batch -> SEED + batch);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void mutations(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int answered = 0;
        for (int i = 0; i < IN_A_BATCH; i++) {
            RequestTree request = fresh();
            int changes = 1 + random.nextInt(3);
            for (int change = 0; change < changes; change++) {
                mutate(request, random);
            }
            answered += judge(request.text(), "seed " + seed + ", request " + i) ? 1 : 0;
        }
        assertTrue(answered > IN_A_BATCH / 20 && answered < IN_A_BATCH, answered + " answered, seed " + seed);
    }

    static void mutate(RequestTree request, SplittableRandom random) {
        List<String> paths = leaves(request.root(), "");
        if (paths.isEmpty()) {
            return;
        }
        String path = paths.get(random.nextInt(paths.size()));
        for (int up = random.nextInt(4) == 0 ? 1 + random.nextInt(2) : 0; up > 0 && path.matches(".*[.\\[].*"); up--) {
            path = path.replaceFirst("(\\.[^.\\[]*|\\[\\d+])$", "");
        }
        if (path.isEmpty()) {
            return;
        }
        switch (random.nextInt(7)) {
            case 0 -> request.drop(path);
            case 1 -> request.put(path, REPLACEMENTS.get(random.nextInt(REPLACEMENTS.size())));
            case 2 -> exchange(request, path, paths.get(random.nextInt(paths.size())));
            case 3 -> rename(request, path, random);
            case 4 -> doubleAJoint(request, random);
            default -> {
                List<String> ends = ENDS.get(path);
                if (ends != null) {
                    request.put(path, ends.get(random.nextInt(2)));
                }
            }
        }
    }

    private static void exchange(RequestTree request, String one, String other) {
        if (one.startsWith(other) || other.startsWith(one)) {
            return;
        }
        String first = request.at(one).toString();
        String second = request.at(other).toString();
        request.put(one, second).put(other, first);
    }

    private static void rename(RequestTree request, String path, SplittableRandom random) {
        String field = path.substring(path.lastIndexOf('.') + 1);
        if (path.endsWith("]") || !path.contains(".")) {
            return;
        }
        ObjectNode holder = (ObjectNode) request.at(path.substring(0, path.lastIndexOf('.')));
        JsonNode value = holder.remove(field);
        String letter = Character.toString((char) ('a' + random.nextInt(26)));
        holder.set(random.nextBoolean() ? field + letter : letter, value);
    }

    private static void doubleAJoint(RequestTree request, SplittableRandom random) {
        if (request.at("frame.joints") instanceof ArrayNode joints && joints.size() > 0) {
            JsonNode joint = joints.get(random.nextInt(joints.size())).deepCopy();
            if (joint instanceof ObjectNode fields && random.nextBoolean()) {
                fields.set("mark", TextNode.valueOf("again"));
            }
            joints.add(joint);
        }
    }

    /** Joints of every kind, of any sizes that are in range: what fits together is answered, whatever it looks like. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void jointsOfAnySize(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int answered = 0;
        for (int i = 0; i < 60; i++) {
            String joint = anyJoint(random);
            answered += judge(RequestTree.frameOf(joint).text(), "seed " + seed) ? 1 : 0;
        }
        assertTrue(answered > 20, answered + " answered, seed " + seed);
    }

    private static String anyJoint(SplittableRandom random) {
        double branch = any(random, 3, 1000);
        String ends = ", \"branch\": " + tube(branch, random);
        String fillet = ", \"fillet\": {\"leg\": \"" + any(random, 0.5, 50) + " mm\", \"rootGap\": \""
                + random.nextDouble(5) + " mm\"}, \"angle\": \"" + random.nextDouble(20, 160) + " deg\"";
        String plate = ", \"plate\": {\"thickness\": \"" + any(random, 0.3, 100) + " mm\"}";
        return "{\"kind\": "
                + switch (random.nextInt(5)) {
                    case 0 ->
                        "\"tube-to-tube\"" + ends + ", \"main\": "
                                + tube(Math.min(1000, branch * any(random, 1, 10)), random) + fillet;
                    case 1 -> "\"tube-to-plate\"" + ends + plate + fillet;
                    case 2 ->
                        "\"plate-fillet\"" + plate + fillet + ", \"length\": \"" + any(random, 1, 20000) + " mm\"";
                    case 3 ->
                        "\"tube-sleeve\"" + ends + ", \"sleeve\": "
                                + tube(Math.min(1000, branch * any(random, 1.2, 10)), random);
                    default ->
                        "\"plug\", \"holeDiameter\": \"" + any(random, 2, 100) + " mm\", \"depth\": \""
                                + any(random, 0.2, 50) + " mm\"";
                }
                + "}";
    }

    private static String tube(double diameter, SplittableRandom random) {
        double wall = Math.min(50, Math.max(0.2, diameter / 2 * any(random, 0.02, 0.99)));
        return "{\"outsideDiameter\": \"" + diameter + " mm\", \"wall\": \"" + wall + " mm\"}";
    }

    /** Spread evenly over the powers of ten. */
    private static double any(SplittableRandom random, double least, double most) {
        return Math.min(most, Math.max(least, least * Math.pow(most / least, random.nextDouble())));
    }

    /** Gas set-ups of any sizes that are in range: fewer of them, since each start is integrated. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gasSetUpsOfAnySize(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 2; i++) {
            RequestTree request = fresh();
            ENDS.forEach((path, ends) -> {
                if (path.startsWith("gas.") && random.nextInt(3) > 0) {
                    request.put(path, ends.get(random.nextInt(2)));
                }
            });
            assertTrue(judge(request.text(), "seed " + seed));
        }
    }

    /** @return whether it was answered */
    private static boolean judge(String body, String what) {
        Outcome<FrameEstimateAnswer> outcome;
        try {
            outcome = RequestTree.send(body.getBytes(UTF_8), UnitSystem.SI);
        } catch (RuntimeException | StackOverflowError e) {
            return fail(what + ": " + body, e);
        }
        if (outcome instanceof Outcome.Refused<FrameEstimateAnswer> refused) {
            ProblemReport problem = refused.problem();
            assertTrue(problem.status() == 422 || problem.status() == 400, what);
            assertTrue(!problem.violations().isEmpty(), what);
            BadInputTest.inPlainWords(problem);
            return false;
        }
        FrameEstimateAnswer answer = ((Outcome.Answered<FrameEstimateAnswer>) outcome).answer();
        String text = RequestTree.json(answer);
        assertTrue(!text.contains("\"NaN\"") && !text.contains("Infinity\""), () -> what + ": " + body);
        assertTrue(answer.perFrame().labour().total().value() >= 0, what);
        assertTrue(answer.perFrame().seam().depositVolume().value() > 0, () -> what + ": " + body);
        assertTrue(answer.perFrame().arc().time().value() > 0, what);
        if (answer.cost() != null) {
            BigDecimal sum = answer.cost().lines().stream()
                    .map(line -> new BigDecimal(line.amount()))
                    .reduce(BigDecimal.ZERO, BigDecimal::add);
            assertEquals(0, sum.compareTo(new BigDecimal(answer.cost().total())), what);
        }
        return true;
    }
}
