package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;

/** A frame is the sum of its joints, an order so many frames; nothing else changes the figures. */
class RollUpTest {

    /** Nine digits are shown, and half a unit of the ninth is lost in each figure that is added up. */
    private static final double SHOWN = 2e-8;

    private static final long SEED = 20261124;

    static Stream<Long> seeds() {
        return LongStream.range(SEED, SEED + 25).boxed();
    }

    /** A frame of up to eight of the sample's joints, some with settings of their own. */
    private static RequestTree anyFrame(long seed) {
        Random random = new Random(seed);
        RequestTree request = RequestTree.sample();
        ArrayNode joints = (ArrayNode) request.at("frame.joints");
        List<JsonNode> all = new ArrayList<>();
        joints.forEach(all::add);
        joints.removeAll();
        int size = 1 + random.nextInt(8);
        for (int i = 0; i < size; i++) {
            joints.add(all.get(random.nextInt(all.size())).deepCopy());
        }
        for (int i = 0; i < size; i++) {
            String joint = "frame.joints[" + i + "].";
            request.put(joint + "mark", "\"J" + i + "\"")
                    .put(joint + "count", Integer.toString(1 + random.nextInt(40)));
            if (random.nextBoolean()) {
                request.put(joint + "arc", "{\"current\": \"" + (60 + random.nextInt(100)) + " A\"}");
            }
            if (random.nextInt(3) == 0) {
                request.put(joint + "preheated", Boolean.toString(random.nextBoolean()));
            }
            if (random.nextInt(3) == 0) {
                request.put(joint + "backPurge", "{\"flow\": \"5 L/min\", \"time\": \"1 min\"}");
            }
        }
        request.put("frame.quantity", Integer.toString(1 + random.nextInt(1000)));
        request.put("gas.leak", "\"0." + random.nextInt(10) + " L/min\"");
        return RequestTree.of(request.text());
    }

    private static double value(JsonNode answer, String path) {
        JsonNode value = RequestTree.at(answer, path);
        JsonNode number = value.isObject() ? value.path("value") : value;
        assertTrue(number.isNumber(), path + " in " + answer);
        return number.doubleValue();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aFrameIsTheSumOfItsJointsTimesTheirCounts(long seed) {
        JsonNode answer = anyFrame(seed).estimate();
        for (String figure : List.of(
                "seam.length",
                "seam.depositVolume",
                "filler.mass",
                "filler.consumed",
                "filler.rods",
                "arc.time",
                "arc.tackTime",
                "gas.arc",
                "gas.preFlow",
                "gas.startSurge",
                "gas.postFlow",
                "gas.backPurge",
                "gas.storedGas",
                "gas.starts")) {
            double sum = 0;
            for (JsonNode joint : answer.path("joints")) {
                sum += joint.path("count").intValue() * value(joint, figure);
            }
            assertEquals(sum, value(answer, "perFrame." + figure), SHOWN * sum, figure + ", seed " + seed);
        }
        double heat = 0;
        for (JsonNode joint : answer.path("joints")) {
            heat += joint.has("preheat") ? joint.path("count").intValue() * value(joint, "preheat.energy") : 0;
        }
        assertEquals(heat > 0, answer.path("perFrame").has("preheat"), "seed " + seed);
        if (heat > 0) {
            assertEquals(heat, value(answer, "perFrame.preheat.energy"), SHOWN * heat, "seed " + seed);
        }
        double arc = value(answer, "perFrame.arc.time") + value(answer, "perFrame.arc.tackTime");
        assertEquals(arc, value(answer, "perFrame.labour.arc"), SHOWN * arc, "seed " + seed);
        assertEquals(arc / 0.30 - arc, value(answer, "perFrame.labour.handling"), 1e-7 * arc / 0.30, "seed " + seed);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void sharesOfTheGasAreTogetherOneAndPartsAreTheTotal(long seed) {
        JsonNode answer = anyFrame(seed).estimate();
        double sum = 0;
        for (JsonNode share : answer.path("gasShares")) {
            assertTrue(share.doubleValue() >= 0, "seed " + seed);
            sum += share.doubleValue();
        }
        assertEquals(1, sum, 3e-9, "seed " + seed);
        assertEquals(3, answer.path("gasShares").size());
        double total = value(answer, "perFrame.gas.total");
        double parts = 0;
        for (String part : List.of("arc", "preFlow", "startSurge", "postFlow", "backPurge", "leak")) {
            parts += value(answer, "perFrame.gas." + part);
        }
        assertEquals(total, parts, SHOWN * total, "seed " + seed);
        assertEquals(
                (value(answer, "perFrame.gas.startSurge") + value(answer, "perFrame.gas.leak")) / total,
                value(answer, "gasShares.surgeAndLeak"),
                SHOWN,
                "seed " + seed);
        assertEquals(
                (value(answer, "perFrame.gas.preFlow") + value(answer, "perFrame.gas.postFlow")) / total,
                value(answer, "gasShares.preAndPostFlow"),
                SHOWN,
                "seed " + seed);
        double labour = value(answer, "perFrame.labour.total");
        double times = 0;
        for (String part : List.of("arc", "handling", "fitUp", "setUp", "preheat")) {
            times += value(answer, "perFrame.labour." + part);
        }
        assertEquals(labour, times, SHOWN * labour, "seed " + seed);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void anOrderIsSoManyFrames(long seed) {
        RequestTree request = anyFrame(seed);
        int quantity = request.at("frame.quantity").intValue();
        JsonNode answer = request.estimate();
        assertMultiplied("", answer.path("perFrame"), answer.path("forQuantity"), quantity);
        double rods = quantity * value(answer, "perFrame.filler.rods");
        double whole = value(answer, "forQuantity.filler.rods");
        assertEquals(Math.rint(whole), whole, "whole rods for the order, seed " + seed);
        assertTrue(whole >= rods * (1 - 1e-8) && whole < rods * (1 + 1e-8) + 1, rods + " rods, " + whole);
    }

    private static void assertMultiplied(String path, JsonNode one, JsonNode order, int quantity) {
        if (one.isNumber() && !path.equals(".filler.rods")) {
            double expected = quantity * one.doubleValue();
            assertEquals(expected, order.doubleValue(), SHOWN * expected, path);
        }
        one.properties()
                .forEach(field -> assertMultiplied(
                        path + "." + field.getKey(), field.getValue(), order.path(field.getKey()), quantity));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theOrderOfTheJointsDoesNotMatter(long seed) {
        RequestTree request = anyFrame(seed);
        JsonNode answer = request.estimate();
        ArrayNode joints = (ArrayNode) request.at("frame.joints");
        List<JsonNode> shuffled = new ArrayList<>();
        joints.forEach(shuffled::add);
        Collections.shuffle(shuffled, new Random(seed));
        joints.removeAll().addAll(shuffled);
        JsonNode other = request.estimate();
        Answers.assertAlike(answer.path("perFrame"), other.path("perFrame"), SHOWN);
        assertEquals(answer.path("cost"), other.path("cost"), "seed " + seed);
        Map<String, JsonNode> byMark = new HashMap<>();
        answer.path("joints").forEach(joint -> byMark.put(joint.path("mark").textValue(), joint));
        other.path("joints")
                .forEach(joint -> assertEquals(byMark.get(joint.path("mark").textValue()), joint, "seed " + seed));
    }

    /** 1 in = 25.4 mm, 1 ft³ = 28.316846592 L, 1 lb = 453.59237 g, 1 psi = 6.894757… kPa: definitions. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void bothSystemsOfUnitsShowTheSameFigures(long seed) {
        RequestTree request = anyFrame(seed);
        JsonNode si = request.estimate(UnitSystem.SI);
        JsonNode us = request.estimate(UnitSystem.US);
        assertSameFigures("", si, us);
        assertEquals(si.path("cost"), us.path("cost"));
    }

    private static final Map<String, Double> SI_BY_US_UNIT = Map.ofEntries(
            Map.entry("in", 25.4),
            Map.entry("in2", 25.4 * 25.4),
            Map.entry("in3", 25.4 * 25.4 * 25.4),
            Map.entry("lb", 453.59237),
            Map.entry("ft3", 28.316846592),
            Map.entry("ft3/h", 28.316846592 / 60),
            Map.entry("in/min", 25.4 / 60),
            Map.entry("kJ/in", 1 / 25.4),
            Map.entry("Btu", 1.05505585262),
            Map.entry("deg", 1.0),
            Map.entry("s", 1.0),
            Map.entry("A", 1.0),
            Map.entry("W", 1.0),
            Map.entry("kWh", 1.0));

    private static void assertSameFigures(String path, JsonNode si, JsonNode us) {
        if (path.endsWith(".cost") || path.endsWith(".assumptions") || path.endsWith(".basis")) {
            return;
        }
        if (si.isObject() && si.has("unit")) {
            String unit = us.path("unit").textValue();
            if (unit.equals("degF")) {
                double celsius = (us.path("value").doubleValue() - 32) / 1.8;
                assertEquals(si.path("value").doubleValue(), celsius, 1e-6, path);
                return;
            }
            assertTrue(SI_BY_US_UNIT.containsKey(unit), path + ": " + unit);
            double expected = si.path("value").doubleValue();
            assertEquals(
                    expected,
                    us.path("value").doubleValue() * SI_BY_US_UNIT.get(unit),
                    SHOWN * Math.abs(expected),
                    path);
            return;
        }
        assertEquals(si.size(), us.size(), path);
        si.properties()
                .forEach(field ->
                        assertSameFigures(path + "." + field.getKey(), field.getValue(), us.path(field.getKey())));
        for (int i = 0; si.isArray() && i < si.size(); i++) {
            assertSameFigures(path + "[" + i + "]", si.get(i), us.get(i));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theSameRequestTwiceGivesTheSameBytes(long seed) {
        String body = anyFrame(seed).text();
        String first = answer(new Engine("test"), body);
        assertEquals(first, answer(RequestTree.ENGINE, body), "seed " + seed);
        assertEquals(first, answer(RequestTree.ENGINE, body), "seed " + seed);
    }

    private static String answer(Engine engine, String body) {
        try {
            Outcome<FrameEstimateAnswer> outcome = engine.frameEstimate(
                    new java.io.ByteArrayInputStream(body.getBytes(java.nio.charset.StandardCharsets.UTF_8)),
                    UnitSystem.SI);
            return RequestTree.json(((Outcome.Answered<FrameEstimateAnswer>) outcome).answer());
        } catch (java.io.IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** The same tubes in inches and in millimetres are the same joint to the last digit. */
    @Test
    void inchesAndMillimetresAreTheSameTube() {
        RequestTree metric = RequestTree.sample()
                .put("frame.joints[0].branch", "{\"outsideDiameter\": \"38.1 mm\", \"wall\": \"2.413 mm\"}")
                .put("frame.joints[0].main", "{\"outsideDiameter\": \"3.81 cm\", \"wall\": \"2.413 mm\"}")
                .put("frame.joints[0].fillet.leg", "\"3.175 mm\"")
                .put("arc.maxTravelSpeed", "\"152.4 mm/min\"");
        assertEquals(RequestTree.sample().estimate(), metric.estimate());
    }

    /** 10 000 joints of 10 000 each, a million frames: more plugs than an int holds. */
    @ParameterizedTest
    @ValueSource(ints = {1, 300})
    void countsDoNotOverflow(int joints) {
        String plug = "{\"kind\": \"plug\", \"count\": 10000, \"holeDiameter\": \"9 mm\", \"depth\": \"2 mm\"}";
        JsonNode answer = RequestTree.frameOf((plug + ", ").repeat(joints - 1) + plug)
                .put("frame.quantity", "1000000")
                .estimate();
        assertEquals(
                joints * 10_000_000_000L,
                RequestTree.at(answer, "forQuantity.plugs").longValue());
        assertEquals(
                joints * 10_000_000_000L,
                RequestTree.at(answer, "forQuantity.gas.starts").longValue());
    }
}
