package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.quantity.UnitSystem;

/** Joints with kinds, diameters and walls only: everything else is taken, and said, with its reason. */
class MinimalRequestTest {

    private static final String TUBES =
            "{\"kind\": \"tube-to-tube\", \"branch\": {\"outsideDiameter\": \"1.25 in\", \"wall\": \"0.065 in\"},"
                    + " \"main\": {\"outsideDiameter\": \"1.5 in\", \"wall\": \"0.095 in\"}}";
    private static final String SLEEVE =
            "{\"kind\": \"tube-sleeve\", \"branch\": {\"outsideDiameter\": \"1.25 in\", \"wall\": \"0.083 in\"},"
                    + " \"sleeve\": {\"outsideDiameter\": \"1.375 in\", \"wall\": \"0.058 in\"}}";
    private static final String PLATE =
            "{\"kind\": \"plate-fillet\", \"plate\": {\"thickness\": \"0.25 in\"}, \"length\": \"2 in\"}";
    private static final String PLUG = "{\"kind\": \"plug\", \"holeDiameter\": \"0.375 in\", \"depth\": \"0.095 in\"}";

    private static final JsonNode ANSWER = RequestTree.frameOf(TUBES).estimate(UnitSystem.US);

    private static JsonNode assumption(JsonNode answer, String path) {
        for (JsonNode assumption : answer.path("assumptions")) {
            if (assumption.path("path").textValue().equals(path)) {
                return assumption;
            }
        }
        throw new AssertionError(path + " not among " + answer.path("assumptions"));
    }

    /** The whole list, value by value; the reason must speak of what is named here. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            frame.joints[0].fillet.leg      | 0.08125 in   | 1.25 times the thinner wall
            frame.joints[0].fillet.face     | flat         | decision of this project
            frame.joints[0].fillet.rootGap  | 0 in         | decision of this project
            frame.joints[0].offset          | 0 in         | axes cross
            frame.joints[0].angle           | 90 deg       | square
            frame.joints[0].tacks           | 4            | common practice, no source
            frame.joints[0].segments        | 4            | common practice, no source
            frame.joints[0].count           | 1            | unless more
            frame.joints[0].mark            | #1           | numbered
            frame.joints[0].preheated       | false        | asked for
            frame.joints[0].arc.current     | 65 A         | common practice, no source
            frame.joints[0].gas.postFlow    | 8 s          | 1 s per 10 A
            arc.maxTravelSpeed              | 6 in/min     | common practice, no source
            arc.voltage                     | 11 V         | 9 to 15 V
            arc.arcEfficiency               | 0.67         | DuPont and Marder
            arc.meltingEfficiency           | 0.2          | 0.15 to 0.35
            arc.tackTime                    | 2 s          | decision of this project
            arc.powerSourceEfficiency       | 0.8          | decision of this project
            steel.dilution                  | 0.3          | 20 to 40 %
            steel.base                      | 4130         | usual steel of such frames
            steel.hydrogen                  | 3 mL/100g    | class H5 of ISO 3690
            steel.restraint                 | medium       | common practice, no source
            preheat.ambient                 | 68 degF      | room temperature
            filler.classification           | ER70S-2      | common practice, no source
            filler.diameter                 | 0.0625 in    | from memory
            filler.rodLength                | 36 in        | from memory
            filler.stubLength               | 2 in         | from memory
            filler.depositionEfficiency     | 0.98         | from memory
            gas.mixture                     | argon        | common practice, no source
            gas.flow                        | 15 ft3/h     | common practice, no source
            gas.preFlow                     | 0.5 s        | common practice, no source
            gas.referenceTemperature        | 70 degF      | standard cubic foot
            gas.temperature                 | 70 degF      | reference state
            gas.supplyGaugePressure         | 50 psi       | common practice, no source
            gas.torchBackPressure           | 3 psi        | decision of this project
            gas.hose.insideDiameter         | 0.25 in      | common practice, no source
            gas.hose.length                 | 300 in       | common practice, no source
            gas.nozzleDiameter              | 0.5 in       | common practice, no source
            gas.meterAt                     | supply       | common practice, no source
            gas.leak                        | 0 ft3/h      | none known of
            labour.operatingFactor          | 0.35         | at the joint
            labour.fitUpPerJoint            | 360 s        | decision of this project
            labour.setUpPerOrder            | 3600 s       | decision of this project
            frame.quantity                  | 1            | unless more
            frame.joints[0].access          | 1            | decision of this project
            """)
    void isSaidWithItsReason(String path, String value, String because) {
        JsonNode assumption = assumption(ANSWER, path);
        assertEquals(value, assumption.path("value").textValue());
        assertTrue(
                assumption.path("because").textValue().contains(because),
                assumption.path("because").textValue());
    }

    @Test
    void nothingElseIsAssumed() {
        assertEquals(45, ANSWER.path("assumptions").size());
    }

    @Test
    void withoutPricesThereIsNoCostAndWithoutPreheatNone() {
        assertFalse(ANSWER.has("cost"));
        assertFalse(ANSWER.path("joints").get(0).has("preheat"));
        assertFalse(ANSWER.path("perFrame").has("preheat"));
        assertEquals("#1", RequestTree.at(ANSWER, "joints[0].mark").textValue());
    }

    /** Every assumption sent back gives the same to the four digits it is shown with, and leaves nothing to be assumed. */
    @Test
    void whatWasAssumedSentBackGivesTheSame() {
        RequestTree request = RequestTree.frameOf(TUBES);
        Map<String, String> sorted = new TreeMap<>();
        JsonNode answer = request.estimate();
        answer.path("assumptions")
                .forEach(a ->
                        sorted.put(a.path("path").textValue(), a.path("value").textValue()));
        for (String holder : List.of(
                "arc",
                "steel",
                "filler",
                "gas",
                "gas.hose",
                "labour",
                "preheat",
                "frame.joints[0].fillet",
                "frame.joints[0].arc",
                "frame.joints[0].gas")) {
            request.put(holder, "{}");
            request = RequestTree.of(request.text());
        }
        for (Map.Entry<String, String> entry : sorted.entrySet()) {
            // 4130 is a name, not a number
            boolean bare = entry.getValue().matches("[0-9.]+|true|false")
                    && !entry.getKey().equals("steel.base");
            String raw = bare ? entry.getValue() : "\"" + entry.getValue() + "\"";
            request.put(entry.getKey(), entry.getKey().endsWith("face") ? "{\"form\": " + raw + "}" : raw);
        }
        JsonNode again = request.estimate();
        assertEquals(
                0, again.path("assumptions").size(), again.path("assumptions").toString());
        Answers.assertAlike(answer.path("perFrame"), again.path("perFrame"), 1e-3);
    }

    @Test
    void eachKindHasItsOwnUsualTacksAndSegments() {
        JsonNode joints =
                RequestTree.frameOf(TUBES, SLEEVE, PLATE, PLUG).estimate().path("joints");
        int[][] usual = {{4, 4}, {3, 2}, {2, 1}, {0, 1}};
        for (int i = 0; i < usual.length; i++) {
            assertEquals(
                    usual[i][0],
                    joints.get(i).path("tacks").intValue(),
                    "tacks of " + joints.get(i).path("kind"));
            assertEquals(
                    usual[i][1],
                    joints.get(i).path("segments").intValue(),
                    "segments of " + joints.get(i).path("kind"));
        }
    }

    /** 1.25 times the wall of 0.058 in would overhang the sleeve's end. */
    @Test
    void aLegAtAnEdgeIsAtMostTheEdge() {
        JsonNode answer = RequestTree.frameOf(SLEEVE, PLATE).estimate(UnitSystem.US);
        for (JsonNode a : answer.path("assumptions")) {
            if (a.path("path").textValue().equals("frame.joints[0].fillet.leg")) {
                assertEquals("0.058 in", a.path("value").textValue());
            }
            if (a.path("path").textValue().equals("frame.joints[1].fillet.leg")) {
                assertEquals("0.25 in", a.path("value").textValue());
            }
        }
        assertEquals(
                "0.058 in",
                assumption(answer, "frame.joints[0].fillet.leg").path("value").textValue());
        assertEquals(
                "0.25 in",
                assumption(answer, "frame.joints[1].fillet.leg").path("value").textValue());
    }

    /** 0.25 in asks for 250 A: the rule ends at 200 A; and 1 s per 10 A is then more than 8 s. */
    @Test
    void currentEndsAtTwoHundredAmperesAndPostFlowGrowsWithIt() {
        JsonNode answer = RequestTree.frameOf(PLATE).estimate();
        assertEquals(
                "200 A",
                assumption(answer, "frame.joints[0].arc.current").path("value").textValue());
        assertEquals(
                "20 s",
                assumption(answer, "frame.joints[0].gas.postFlow").path("value").textValue());
    }

    @Test
    void aDefaultThatSeveralJointsShareIsSaidOnceWithTheirMarks() {
        JsonNode shared = assumption(RequestTree.frameOf(TUBES, PLUG, TUBES).estimate(), "frame.joints[*].angle");
        assertEquals("[\"#1\",\"#3\"]", shared.path("joints").toString());
    }

    @Test
    void preheatAskedForBringsItsOwnDefaults() {
        JsonNode answer = RequestTree.frameOf(TUBES)
                .put("preheat", "{\"temperature\": \"300 degF\"}")
                .put("frame.joints[0].preheated", "true")
                .estimate(UnitSystem.US);
        assertEquals(
                "68 degF", assumption(answer, "preheat.ambient").path("value").textValue());
        assertEquals("3 in", assumption(answer, "preheat.zone").path("value").textValue());
        assertEquals("0 s", assumption(answer, "preheat.hold").path("value").textValue());
        assertEquals(
                "propane", assumption(answer, "preheat.source").path("value").textValue());
        assertEquals(
                "0.25",
                assumption(answer, "preheat.heatingEfficiency").path("value").textValue());
        assertTrue(assumption(answer, "preheat.sourcePower")
                .path("because")
                .textValue()
                .contains("left out"));
        assertTrue(RequestTree.at(answer, "joints[0].preheat.energy.value").doubleValue() > 0);
    }
}
