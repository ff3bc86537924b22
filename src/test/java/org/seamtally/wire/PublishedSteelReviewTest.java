package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.seamtally.quantity.UnitSystem;

/** Published and hand-worked figures of steel welding, asked for as a user would ask. */
class PublishedSteelReviewTest {

    private static final String REVIEW =
            "{'base': '4130', 'wall': '0.095 in', 'dilution': 0.35, 'fillers': ['ER80S-D2',"
                    + " 'ER70S-2', 'ER80S-B2'], 'arc': {'current': '90 A', 'voltage': '11 V', 'travelSpeed': '4 in/min',"
                    + " 'arcEfficiency': 0.6}, 'hydrogen': '3 mL/100g', 'startTemperature': '68 degF'}";

    private static JsonNode review(String request) throws IOException {
        return Asked.answer(Engine::steelReview, request);
    }

    private static JsonNode filler(JsonNode answer, String name) {
        for (JsonNode filler : answer.get("fillers")) {
            if (filler.get("filler").asText().equals(name)) {
                return filler;
            }
        }
        throw new AssertionError(name + " is not in " + answer);
    }

    private static double value(JsonNode quantity, String unit) {
        assertEquals(unit, quantity.get("unit").asText());
        return quantity.get("value").asDouble();
    }

    private static List<String> causes(JsonNode part) {
        List<String> causes = new ArrayList<>();
        part.get("cautions").forEach(caution -> causes.add(caution.get("cause").asText()));
        return causes;
    }

    /** By hand: each element is 0.35 of the tube's and 0.65 of the rod's. */
    @Test
    void dilutionOf4130IntoALowCarbonRod() throws IOException {
        JsonNode composition = review(
                        "{'base': {'C': 0.305, 'Mn': 0.50, 'Si': 0.25, 'Cr': 0.95, 'Mo': 0.20}, 'wall': '0.095 in',"
                                + " 'dilution': 0.35, 'fillers': [{'C': 0.05, 'Mn': 1.15, 'Si': 0.55}]}")
                .at("/fillers/0/weldMetal/composition");
        assertEquals(0.13925, composition.get("C").asDouble(), 1e-9);
        assertEquals(0.9225, composition.get("Mn").asDouble(), 1e-9);
        assertEquals(0.445, composition.get("Si").asDouble(), 1e-9);
        assertEquals(0.3325, composition.get("Cr").asDouble(), 1e-9);
        assertEquals(0.070, composition.get("Mo").asDouble(), 1e-9);
        assertEquals(5, composition.size());
    }

    /** ASTM A255's worked example, SAE 4118 modified: 1.932 in unrounded, 1.95 in with the printed, rounded factors. */
    @Test
    void idealDiameterOfTheStandardsExample() throws IOException {
        JsonNode base = Asked.answer(
                        Engine::steelReview,
                        "{'base': {'C': 0.22, 'Mn': 0.80, 'Si': 0.18, 'Ni': 0.10, 'Cr': 0.43, 'Mo': 0.25, 'Cu': 0.10,"
                                + " 'V': 0.05}, 'wall': '6 mm', 'fillers': ['ER70S-2']}",
                        UnitSystem.US)
                .get("base");
        double found = value(base.at("/idealDiameter/diameter"), "in");
        assertEquals(1.9321, found, 5e-5);
        assertEquals(1.95, found, 0.0195);
        assertTrue(base.at("/idealDiameter/insideRange").asBoolean());
    }

    /** Andrews' linear formula (read second-hand) and the three carbon equivalents (from memory), mid 4130, by hand. */
    @Test
    void formulasOfTheAnalysisAlone() throws IOException {
        JsonNode base = review(
                        "{'base': {'C': 0.305, 'Mn': 0.50, 'Si': 0.25, 'Cr': 0.95, 'Mo': 0.20}, 'wall': '0.095 in',"
                                + " 'fillers': ['ER70S-2']}")
                .get("base");
        // 539 − 423·0.305 − 30.4·0.50 − 12.1·0.95 − 7.5·0.20
        assertEquals(381.79, value(base.at("/martensiteStart/andrews"), "degC"), 1e-6);
        // 0.305 + 0.5/6 + 1.15/5
        assertEquals(0.6183333, base.at("/carbonEquivalents/0/value").asDouble(), 1e-6);
        // 0.305 + 0.70/10 + 0.95/20
        assertEquals(0.4225, base.at("/carbonEquivalents/1/value").asDouble(), 1e-9);
        // 0.305 + 0.25/30 + 1.45/20 + 0.20/15
        assertEquals(0.3991667, base.at("/carbonEquivalents/2/value").asDouble(), 1e-6);
        assertFalse(base.at("/carbonEquivalents/2/insideRange").asBoolean());
        assertTrue(base.get("heatTreatment") == null, "an analysis says nothing of the condition");
        assertTrue(causes(review("{'base': {'C': 0.3, 'Mn': 0.6}, 'wall': '2 mm', 'fillers': ['ER70S-2']}")
                        .get("base"))
                .contains("condition-not-given"));
    }

    /** EN 1011-2:2001 annex D (read second-hand), by hand for Q 0.350787 kJ/mm, 2.413 mm, 20 °C and a fillet. */
    @Test
    void coolingOfAThinFillet() throws IOException {
        JsonNode answer = review(REVIEW);
        JsonNode cooling = answer.at("/base/cooling");
        assertEquals(16.09025, value(cooling.get("t85"), "s"), 1e-5);
        assertEquals(10.80688, value(cooling.get("fastBound"), "s"), 1e-5);
        assertEquals(1.242934, value(cooling.get("thick"), "s"), 1e-6);
        assertEquals(8.681897, value(cooling.get("transitionThickness"), "mm"), 1e-6);
        assertEquals("thin", cooling.get("regime").asText());
        assertEquals(5.150238, value(cooling.get("rateAt540"), "degC/s"), 1e-6);
        assertEquals(0.3507874, value(answer.at("/conditions/standardHeatInput"), "kJ/mm"), 1e-6);
        // 90 A · 11 V over 4 in/min is 0.584646 kJ/mm, six tenths of it the same as the standard's own
        assertEquals(0.5846457, value(answer.at("/conditions/arcEnergy"), "kJ/mm"), 1e-6);
        assertEquals(0.3507874, value(answer.at("/conditions/heatInput"), "kJ/mm"), 1e-6);
        // Yurioka et al. 1987, from memory: mid 4130 has 430 HV at 16 s
        assertEquals(430, value(answer.at("/base/hardness/yurioka"), "HV"), 1.5);
    }

    /** Common practice, no source: low-carbon rod and no preheat for thin normalized 4130; preheat with stronger rods. */
    @Test
    void orderOfTheFillersFor4130() throws IOException {
        JsonNode answer = review(REVIEW);
        assertEquals("ER70S-2", answer.at("/fillers/0/filler").asText());
        assertEquals(1, answer.at("/fillers/0/rank").asInt());
        assertEquals("none", answer.at("/fillers/0/preheat/verdict").asText());
        assertTrue(answer.at("/fillers/0/preheat/advised").isMissingNode());
        JsonNode low = filler(answer, "ER70S-2");
        JsonNode strong = filler(answer, "ER80S-D2");
        assertEquals("preheat", strong.at("/preheat/verdict").asText());
        assertTrue(value(strong.at("/preheat/advised"), "degC") >= 150);
        assertTrue(strong.get("cautionedForCracking").asBoolean());
        assertTrue(causes(strong).contains("weld-metal-cracking"));
        assertEquals("cracking", low.get("decidedBy").asText());
        double ofTube = value(answer.at("/base/idealDiameter/diameter"), "mm");
        double ofLow = value(low.at("/weldMetal/idealDiameter/diameter"), "mm");
        double ofStrong = value(strong.at("/weldMetal/idealDiameter/diameter"), "mm");
        assertTrue(ofLow < ofTube && ofLow < ofStrong);
        // its molybdenum is over twice the tube's
        assertTrue(strong.at("/composition/Mo").asDouble()
                > 2 * answer.at("/base/composition/Mo").asDouble());
        // after the preheat it cools more slowly and stays softer
        assertTrue(value(strong.at("/preheat/after/t85"), "s") > value(strong.at("/cooling/t85"), "s"));
        assertTrue(value(strong.at("/preheat/after/hardness/yurioka"), "HV")
                < value(strong.at("/hardness/yurioka"), "HV"));
        for (JsonNode method : low.at("/preheat/methods")) {
            assertFalse(method.get("insideRange").asBoolean(), "thin tube lies outside both methods");
            assertTrue(method.get("outside").size() > 0);
        }
    }

    /** At 30 % dilution, by ASTM A255's factors worked by hand: the deposit is more hardenable than the tube's 2.52 in. */
    @Test
    void aManganeseMolybdenumDepositHardensMoreThanTheTube() throws IOException {
        JsonNode answer = Asked.answer(
                Engine::steelReview,
                "{'base': {'C': 0.305, 'Mn': 0.50, 'Si': 0.25, 'Cr': 0.95, 'Mo': 0.20}, 'wall': '0.095 in',"
                        + " 'dilution': 0.30, 'fillers': [{'C': 0.09, 'Mn': 1.85, 'Si': 0.65, 'Mo': 0.50}]}",
                UnitSystem.US);
        assertEquals(2.52, value(answer.at("/base/idealDiameter/diameter"), "in"), 5e-3);
        // C .1545, Mn 1.445, Si .53, Cr .285, Mo .41: .54C · (5.10 Mn − 1.12) · (1 + .7 Si) · (1 + 2.16 Cr) · (1 + 3
        // Mo)
        double byHand = 0.08343 * 6.2495 * 1.371 * 1.6156 * 2.23;
        assertEquals(byHand, value(answer.at("/fillers/0/weldMetal/idealDiameter/diameter"), "in"), 1e-6);
        assertTrue(answer.at("/fillers/0/cautionedForCracking").asBoolean());
    }

    /** Handbook range, from memory: the same for every steel. */
    @Test
    void stiffnessIsTheSameForEverySteel() throws IOException {
        for (String base : List.of("4130", "4130 HT-180", "1020", "A514 grade B")) {
            JsonNode modulus = review("{'base': '" + base + "', 'wall': '2 mm', 'fillers': ['ER70S-2']}")
                    .get("youngsModulus");
            assertEquals(200_000, value(modulus.get("least"), "MPa"), 1e-6);
            assertEquals(210_000, value(modulus.get("greatest"), "MPa"), 1e-6);
        }
    }

    /** Common practice: 150 ksi tube may fall towards the 95 ksi (MIL-HDBK-5, from memory) of normalized thin tube. */
    @Test
    void quenchedAndTemperedTubeSoftens() throws IOException {
        JsonNode softened = Asked.answer(
                        Engine::steelReview,
                        "{'base': '4130 HT-150', 'wall': '0.095 in', 'fillers': ['ER70S-2']}",
                        UnitSystem.US)
                .at("/base/softenedZone");
        assertEquals(95, value(softened.get("least"), "ksi"), 1e-6);
        assertEquals(150, value(softened.get("greatest"), "ksi"), 1e-6);
        assertTrue(review(REVIEW).at("/base/softenedZone").isMissingNode());
    }
}
