package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.seamtally.quantity.UnitSystem;

/** A leg may meet the code's table at the heel while next to nothing of its throat can be counted: that is said. */
class HeelThroatTest {

    private static JsonNode joint(String angle, String leg) throws IOException {
        String request = """
                {"frame": {"joints": [{"kind": "tube-to-tube", "branch": {"outsideDiameter": "38 mm", "wall": "2 mm"},
                  "main": {"outsideDiameter": "50 mm", "wall": "2 mm"}, "angle": "%s", "fillet": {"leg": "%s"}}]}}""".formatted(angle, leg);
        Outcome<FrameEstimateAnswer> outcome = new Engine("test")
                .frameEstimate(new ByteArrayInputStream(request.getBytes(StandardCharsets.UTF_8)), UnitSystem.SI);
        return Json.mapper()
                .valueToTree(((Outcome.Answered<FrameEstimateAnswer>) outcome).answer())
                .at("/joints/0");
    }

    private static JsonNode caution(JsonNode joint, String cause) {
        for (JsonNode caution : joint.path("cautions")) {
            if (caution.path("cause").textValue().equals(cause)) {
                return caution;
            }
        }
        return null;
    }

    @Test
    void aHeelWhoseThroatIsLostIsCautionedThoughItsLegMeetsTheTable() throws IOException {
        // 40° at the heel: AWS D1.1's loss at a root of 30° to 45° (6 mm, from memory) eats a 3 mm leg's throat
        JsonNode joint = joint("40 deg", "3 mm");
        assertTrue(
                joint.at("/fillet/zones/0/meets").booleanValue(),
                joint.path("fillet").toString());
        JsonNode caution = caution(joint, "heel-throat");
        assertTrue(caution.path("text").textValue().contains("a throat of 0 mm is left"), caution.toString());
    }

    @Test
    void aSquareJointHasNoHeelToCaution() throws IOException {
        assertEquals(null, caution(joint("90 deg", "3 mm"), "heel-throat"));
    }

    @Test
    void aSmallLegIsToldWhatIsAskedFor() throws IOException {
        // 1.5 times the wall below 60° (from memory): 3 mm
        String text =
                caution(joint("40 deg", "2 mm"), "fillet-small").path("text").textValue();
        assertTrue(text.contains("3 mm is asked for"), text);
        assertFalse(text.contains("root gap"), text);
    }
}
