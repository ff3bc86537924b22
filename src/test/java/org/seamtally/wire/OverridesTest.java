package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A joint's own settings go before the request's, field by field; what a joint asks for besides. */
class OverridesTest {

    private static final JsonNode PLAIN = RequestTree.sample().estimate();

    private static double value(JsonNode answer, String path) {
        JsonNode value = RequestTree.at(answer, path + ".value");
        assertTrue(value.isNumber(), path);
        return value.doubleValue();
    }

    /** One field as the joint's own gives what the same field gives in the request, on that joint and on no other. */
    @ParameterizedTest
    @CsvSource({
        "arc.current, '\"120 A\"'",
        "arc.arcEfficiency, 0.6",
        "arc.tackTime, '\"3 s\"'",
        "arc.travelSpeed, '\"2 mm/s\"'",
        "filler.diameter, '\"2.4 mm\"'",
        "filler.depositionEfficiency, 0.95",
        "steel.dilution, 0.4",
        "gas.flow, '\"9 L/min\"'",
        "gas.preFlow, '\"1 s\"'",
        "gas.orificeDiameter, '\"0.6 mm\"'",
        "gas.meterAt, '\"machine\"'",
        "preheat.temperature, '\"150 degC\"'",
        "preheat.hold, '\"5 min\"'",
        "preheat.source, '\"acetylene\"'"
    })
    void goesBeforeTheRequestsAndLeavesTheRestToIt(String path, String raw) {
        String part = path.substring(0, path.indexOf('.'));
        String field = path.substring(path.indexOf('.') + 1);
        JsonNode everywhere = RequestTree.sample().put(path, raw).estimate();
        JsonNode own = RequestTree.sample()
                .put("frame.joints[0]." + part, "{\"" + field + "\": " + raw + "}")
                .estimate();
        assertEquals(RequestTree.at(everywhere, "joints[0]"), RequestTree.at(own, "joints[0]"));
        assertFalse(RequestTree.at(PLAIN, "joints[0]").equals(RequestTree.at(own, "joints[0]")), "changes nothing");
        for (int other = 1; other < 5; other++) {
            assertEquals(RequestTree.at(PLAIN, "joints[" + other + "]"), RequestTree.at(own, "joints[" + other + "]"));
        }
    }

    @Test
    void anotherFillerIsTakenFromTheCatalogue() {
        JsonNode own = RequestTree.sample()
                .put("frame.joints[0].filler", "{\"classification\": \"ER80S-D2\"}")
                .put("frame.joints[0].steel", "{\"base\": \"1020\"}")
                .estimate();
        assertEquals(RequestTree.at(PLAIN, "joints[0].seam"), RequestTree.at(own, "joints[0].seam"));
    }

    /** Asked for by the joint's own preheat settings, unless it says no. */
    @Test
    void ownPreheatSettingsAskForPreheat() {
        JsonNode implied = RequestTree.sample()
                .put("frame.joints[1].preheat", "{\"zone\": \"2 in\"}")
                .estimate();
        assertTrue(value(implied, "joints[1].preheat.energy") > 0);
        JsonNode refused = RequestTree.sample()
                .put("frame.joints[1].preheat", "{\"zone\": \"2 in\"}")
                .put("frame.joints[1].preheated", "false")
                .estimate();
        assertFalse(RequestTree.at(refused, "joints[1]").has("preheat"));
        JsonNode empty =
                RequestTree.sample().put("frame.joints[1].preheat", "{}").estimate();
        assertFalse(RequestTree.at(empty, "joints[1]").has("preheat"), "an empty part asks for nothing");
        assertTrue(RequestTree.at(PLAIN, "joints[0]").has("preheat"));
        assertFalse(RequestTree.at(PLAIN, "joints[1]").has("preheat"));
    }

    /** 5 L/min for 30 s and the joint's arc time, tacks left out. */
    @Test
    void backPurgeRunsForPurgeAndArcTime() {
        JsonNode purged = RequestTree.sample()
                .put("frame.joints[1].backPurge", "{\"flow\": \"6 L/min\", \"time\": \"30 s\"}")
                .estimate();
        double expected = 0.1 * (30 + value(purged, "joints[1].arc.time"));
        assertEquals(expected, value(purged, "joints[1].gas.backPurge"), 1e-8 * expected);
        assertEquals(4 * expected, value(purged, "perFrame.gas.backPurge"), 1e-8 * expected);
        assertEquals(
                value(PLAIN, "perFrame.gas.total") + 4 * expected,
                value(purged, "perFrame.gas.total"),
                1e-7 * expected);
    }

    /** A leak runs through all labour, set-up included. */
    @Test
    void aLeakRunsThroughAllLabour() {
        JsonNode leaking = RequestTree.sample().put("gas.leak", "\"0.6 L/min\"").estimate();
        double expected = 0.01 * value(leaking, "perFrame.labour.total");
        assertEquals(expected, value(leaking, "perFrame.gas.leak"), 1e-8 * expected);
        assertEquals(0, value(PLAIN, "perFrame.gas.leak"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 1, 1.5, 3})
    void accessMultipliesThatJointsHandlingAlone(double access) {
        JsonNode answer = RequestTree.sample()
                .put("frame.joints[2].access", Double.toString(access))
                .estimate();
        // arc on, tacks included, over an operating factor of 0.30
        double handling =
                8 * (value(PLAIN, "joints[2].arc.time") + value(PLAIN, "joints[2].arc.tackTime")) * (1 / 0.30 - 1);
        assertEquals(
                value(PLAIN, "perFrame.labour.handling") + (access - 1) * handling,
                value(answer, "perFrame.labour.handling"),
                1e-6 * handling);
        assertEquals(value(PLAIN, "perFrame.labour.arc"), value(answer, "perFrame.labour.arc"));
        assertEquals(value(PLAIN, "perFrame.labour.fitUp"), value(answer, "perFrame.labour.fitUp"));
    }

    @Test
    void aProcedureIsPrintedThrough() {
        JsonNode answer = RequestTree.sample()
                .put("frame.joints[2].procedure", "\"WPS 12 rev. 3\"")
                .estimate();
        assertEquals(
                "WPS 12 rev. 3", RequestTree.at(answer, "joints[2].procedure").textValue());
        assertFalse(RequestTree.at(answer, "joints[0]").has("procedure"));
    }

    @ParameterizedTest
    @CsvSource({
        "1.6 mm, false",
        "1.61 mm, true",
        "5 mm, true",
    })
    void aRootGapAboveASixteenthIsCautioned(String gap, boolean cautioned) {
        JsonNode answer = RequestTree.sample()
                .put("frame.joints[1].fillet.rootGap", "\"" + gap + "\"")
                .estimate();
        assertEquals(cautioned, causes(answer, 1).contains("root-gap"));
    }

    @ParameterizedTest
    @CsvSource({"0.125 in, false", "0.126 in, true"})
    void aLegLongerThanAPlatesEdgeIsCautioned(String leg, boolean cautioned) {
        JsonNode answer = RequestTree.sample()
                .put("frame.joints[2].fillet.leg", "\"" + leg + "\"")
                .estimate();
        assertEquals(cautioned, causes(answer, 2).contains("leg-over-edge"));
    }

    /** One rule for the default, the caution and the check: an edge of 3/8 in takes a leg of 3/8 in whole. */
    @ParameterizedTest
    @CsvSource({"0.375 in, false, 9.525", "0.376 in, true, 9.525", ", false, 9.525"})
    void aThickEdgeIsJudgedByItsThicknessAlone(String leg, boolean cautioned, double counts) {
        RequestTree request = RequestTree.sample().put("frame.joints[2].plate.thickness", "\"0.375 in\"");
        JsonNode answer = (leg == null
                        ? request.drop("frame.joints[2].fillet.leg")
                        : request.put("frame.joints[2].fillet.leg", "\"" + leg + "\""))
                .estimate();
        assertEquals(cautioned ? 1 : 0, causes(answer, 2).split("leg-over-edge", -1).length - 1);
        JsonNode fillet = RequestTree.at(answer, "joints[2].fillet");
        assertTrue(fillet.get("meets").asBoolean());
        assertEquals(counts, fillet.at("/leastLeg/value").asDouble(), 1e-6);
        assertEquals(counts / Math.sqrt(2), fillet.at("/leastThroat/value").asDouble(), 1e-6);
    }

    /** A plate's edge takes a leg of one wall, and at 105° the rule asks for 1.1 (AWS D1.1, from memory). */
    @ParameterizedTest
    @CsvSource({"90 deg, 0 mm, true", "105 deg, 0 mm, false", "90 deg, 1 mm, false"})
    void noLeastLegIsNamedThatTheEdgeCannotCarry(String angle, String gap, boolean named) {
        JsonNode answer = RequestTree.sample()
                .put("frame.joints[2].angle", "\"" + angle + "\"")
                .put("frame.joints[2].fillet.rootGap", "\"" + gap + "\"")
                .estimate();
        JsonNode fillet = RequestTree.at(answer, "joints[2].fillet");
        assertEquals(named, fillet.has("leastLeg"));
        assertEquals(named, fillet.get("meets").asBoolean());
        assertEquals(!named, causes(answer, 2).contains("no-leg-fits-edge"));
    }

    @ParameterizedTest
    @CsvSource({"60 deg, false", "59 deg, true"})
    void aNarrowHeelIsCautioned(String angle, boolean cautioned) {
        JsonNode answer = RequestTree.sample()
                .put("frame.joints[2].angle", "\"" + angle + "\"")
                .estimate();
        assertEquals(cautioned, causes(answer, 2).contains("narrow-dihedral"));
    }

    @ParameterizedTest
    @CsvSource({"135 deg, false", "136 deg, true"})
    void aGrooveIsCautioned(String angle, boolean cautioned) {
        JsonNode answer = RequestTree.sample()
                .put("frame.joints[2].angle", "\"" + angle + "\"")
                .estimate();
        assertEquals(cautioned, causes(answer, 2).contains("wide-dihedral"));
    }

    private static String causes(JsonNode answer, int joint) {
        return RequestTree.at(answer, "joints[" + joint + "].cautions")
                .findValuesAsText("cause")
                .toString();
    }

    /** A source's power: 9000 W put 2250 W into the steel at an efficiency of 0.25. */
    @Test
    void aSourcesPowerGivesHeatUpTime() {
        JsonNode answer =
                RequestTree.sample().put("preheat.sourcePower", "\"9 kW\"").estimate();
        double content = 1000 * value(answer, "joints[0].preheat.content");
        double losses = value(answer, "joints[0].preheat.losses");
        double heatUp = content / (0.25 * 9000 - losses / 2);
        assertEquals(heatUp + 120, value(answer, "joints[0].preheat.time"), 1e-6);
        assertEquals((9000 * heatUp + losses * 120 / 0.25) / 1000, value(answer, "joints[0].preheat.energy"), 1e-6);
        assertEquals(2 * (heatUp + 120), value(answer, "perFrame.labour.preheat"), 1e-5);
    }
}
