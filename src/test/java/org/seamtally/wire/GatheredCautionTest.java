package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.quantity.UnitSystem;

/** Cautions that stand on several joints: one text for all of them, true of each. */
class GatheredCautionTest {

    private static final String TUBE = "{\"outsideDiameter\": \"1.5 in\", \"wall\": \"0.095 in\"}";

    private static FrameEstimateAnswer answer(String request) throws IOException {
        Outcome<FrameEstimateAnswer> outcome = new Engine("test")
                .frameEstimate(new ByteArrayInputStream(request.getBytes(StandardCharsets.UTF_8)), UnitSystem.SI);
        return ((Outcome.Answered<FrameEstimateAnswer>) outcome).answer();
    }

    private static String tubes(String mark, String leg) {
        return "{\"mark\": \"" + mark + "\", \"kind\": \"tube-to-tube\", \"branch\": " + TUBE + ", \"main\": " + TUBE
                + ", \"angle\": \"45 deg\", \"fillet\": {\"leg\": \"" + leg + "\"}}";
    }

    private static String plate(String mark, String angle) {
        return "{\"mark\": \"" + mark + "\", \"kind\": \"tube-to-plate\", \"branch\": " + TUBE
                + ", \"plate\": {\"thickness\": \"0.25 in\"}, \"angle\": \"" + angle + "\"}";
    }

    private static List<GatheredCaution> gathered(String cause, String... joints) throws IOException {
        FrameEstimateAnswer answer = answer("{\"frame\": {\"joints\": [" + String.join(", ", joints) + "]}}");
        return GatheredCaution.ofJoints(answer).stream()
                .filter(caution -> caution.cause().equals(cause))
                .toList();
    }

    @Test
    void whatIsTrueOfOneJointAloneIsNotSaidOfTheOther() throws IOException {
        // on a plate at 55° the seam opens to 125° and is nowhere a groove; two equal tubes open to 180°
        List<GatheredCaution> bevels = gathered("bevel-asked", tubes("R1", "3 mm"), plate("P1", "55 deg"));
        assertEquals(
                List.of("R1", "P1"),
                bevels.stream().map(GatheredCaution::joints).toList());
        assertTrue(bevels.get(0).text().contains("it is a groove"), bevels.toString());
        assertFalse(bevels.get(1).text().contains("groove"), bevels.toString());
    }

    @Test
    void theFiguresAreThoseOfTheWorstAndSaySo() throws IOException {
        List<GatheredCaution> small = gathered(
                "fillet-small",
                tubes("R1", "1 mm").replace("0.095", "0.065"),
                tubes("R2", "1 mm"),
                tubes("R3", "1 mm").replace("0.095", "0.083"));
        assertEquals(1, small.size(), small.toString());
        assertEquals("R1, R2, R3", small.get(0).joints());
        // 1.5 times the heaviest wall
        assertTrue(small.get(0).text().contains(": 3.62 mm is asked for."), small.toString());
        assertTrue(
                small.get(0).text().endsWith(" (The figures are those of R2, the worst of them.)"), small.toString());

        List<GatheredCaution> narrow = gathered("narrow-dihedral", plate("P1", "50 deg"), plate("P2", "40 deg"));
        assertEquals("P1, P2", narrow.get(0).joints());
        assertTrue(narrow.get(0).text().contains("meet at 40° at the heel"), narrow.toString());
        assertTrue(narrow.get(0).text().endsWith("those of P2, the worst of them.)"), narrow.toString());
    }

    @Test
    void whatIsTheSameOfAllIsSaidOnceWithoutMore() throws IOException {
        List<GatheredCaution> same = gathered("wide-dihedral", tubes("R1", "3 mm"), tubes("R2", "3 mm"));
        assertEquals("R1, R2", same.get(0).joints());
        assertFalse(same.get(0).text().contains("the worst"), same.toString());
    }

    private static String words(String text) {
        return text.replaceAll(" \\(The figures are those of .*\\)$", "").replaceAll("[0-9.]+", "#");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "boat-cradle-equal-tubes",
                "garden-cart-trailer",
                "hill-climb-buggy-roll-structure",
                "trail-buggy-rear-bay"
            })
    void everyJointNamedHasACautionInTheSameWords(String sample) throws IOException {
        FrameEstimateAnswer answer = answer(Files.readString(Path.of("sample-jobs", sample + ".json")));
        for (GatheredCaution gathered : GatheredCaution.ofJoints(answer)) {
            for (JointAnswer joint : answer.joints()) {
                if (List.of(gathered.joints().split(", ")).contains(joint.mark())) {
                    assertTrue(
                            joint.cautions().stream()
                                    .anyMatch(caution -> words(caution.text()).equals(words(gathered.text()))),
                            joint.mark() + " has no such caution: " + gathered);
                }
            }
        }
    }
}
