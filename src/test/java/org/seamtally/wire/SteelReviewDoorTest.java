package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.quantity.UnitSystem;

class SteelReviewDoorTest {

    private static String keys(String request) throws IOException {
        return Asked.refused(Engine::steelReview, request).stream()
                .map(violation -> violation.path() + "=" + violation.key())
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{} | fillers=missing wall=missing",
                "{'wall': '2 mm', 'fillers': []} | fillers=empty",
                "{'wall': '2 mm', 'fillers': ['ER70S-9']} | fillers[0]=unknown-word",
                "{'wall': '2 mm', 'fillers': [4130]} | fillers[0]=unknown-word",
                "{'wall': '2 mm', 'fillers': ['ER70S-2', null]} | fillers[1]=missing",
                "{'wall': '2 mm', 'fillers': [['ER70S-2']]} | fillers[0]=wrong-shape",
                "{'wall': '2 mm', 'fillers': 'ER70S-2'} | fillers=wrong-shape",
                "{'wall': 2, 'fillers': ['ER70S-2'], 'base': '4131'} | base=unknown-word wall=unit-missing",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'base': {}} | base.C=missing",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'base': {'C': 0.3, 'mn': 1}} | base.mn=unknown-field",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'base': {'C': 0.3, 'Fe': 98}} | base.Fe=unknown-field",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'base': {'C': '0.3 %'}} | base.C=not-a-number",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'base': {'C': 0.3, 'Mn': -0.1}} | base.Mn=out-of-range",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'base': {'C': 0.3, 'Mn': {}}} | base.Mn=wrong-shape",
                "{'wall': '2 mm', 'fillers': [{'C': 30}, {'C': 0.1, 'Cr': 20}]} | fillers[0].C=out-of-range fillers[1].Cr=out-of-range",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'restraint': 'total', 'shape': 'lap'} | restraint=unknown-word shape=unknown-word",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'arc': {'meltingEfficiency': 0.2}} | arc.meltingEfficiency=unknown-field",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'startTemperature': '500 degC'} | startTemperature=out-of-range",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'dilution': 1, 'hydrogen': '0 mL/100g'} | dilution=out-of-range hydrogen=out-of-range",
                "{'wall': '2 mm', 'fillers': ['ER70S-2'], 'base': {'C': 0.5, 'Si': 2, 'Mo': 2, 'Ni': 10}} | base=alloy-too-high"
            })
    void badInputsAreRefusedByKey(String request, String keys) throws IOException {
        assertEquals(keys, keys(request));
    }

    @Test
    void elevenFillersAreTooMany() throws IOException {
        String fillers = String.join(", ", java.util.Collections.nCopies(11, "'ER70S-2'"));
        assertEquals("fillers=too-many", keys("{'wall': '2 mm', 'fillers': [" + fillers + "]}"));
    }

    @Test
    void theNearestElementIsNamed() throws IOException {
        Violation violation = Asked.refused(Engine::steelReview, "{'wall': '2 mm', 'fillers': [{'C': 0.1, 'mn': 1}]}")
                .get(0);
        assertTrue(violation.message().contains("\"Mn\""), violation.message());
        assertEquals("fillers[0].mn", violation.path());
        assertTrue(violation.taken().contains("Mo"));
    }

    @Test
    void everyDefaultIsListedWithItsReason() throws IOException {
        JsonNode answer = Asked.answer(Engine::steelReview, "{'wall': '0.095 in', 'fillers': ['ER70S-2']}");
        Map<String, String> assumed = new TreeMap<>();
        answer.get("assumptions").forEach(assumption -> {
            assumed.put(assumption.get("path").asText(), assumption.get("value").asText());
            assertFalse(assumption.get("because").asText().isBlank());
        });
        assertEquals(
                "{arc.arcEfficiency=0.67, arc.current=95 A, arc.travelSpeed=2.54 mm/s, arc.voltage=11 V, base=4130,"
                        + " dilution=0.3, hydrogen=3 mL/100g, restraint=medium, shape=fillet, startTemperature=20 degC}",
                assumed.toString());
    }

    @Test
    void whatIsGivenIsNotAssumed() throws IOException {
        JsonNode answer = Asked.answer(
                Engine::steelReview,
                "{'base': '4130', 'wall': '0.095 in', 'dilution': 0.2, 'fillers': ['ER70S-2'], 'arc': {'current': '60 A',"
                        + " 'voltage': '10 V', 'travelSpeed': '3 in/min', 'arcEfficiency': 0.5}, 'hydrogen': '6 mL/100g',"
                        + " 'startTemperature': '50 degC', 'restraint': 'HIGH', 'shape': 'bead-on-plate'}");
        assertEquals(0, answer.get("assumptions").size());
        assertEquals("high", answer.at("/conditions/restraint").asText());
        assertEquals("bead-on-plate", answer.at("/conditions/shape").asText());
        assertEquals(6, answer.at("/conditions/hydrogen/value").asDouble());
        assertEquals(0.2, answer.at("/conditions/dilution").asDouble());
    }

    /** An analysis that is the catalogue's own gives the catalogue's own figures, strength and condition apart. */
    @Test
    void anAnalysisStandsForAName() throws IOException {
        String rest = ", 'wall': '0.095 in', 'fillers': ['ER70S-2']}";
        JsonNode named = Asked.answer(Engine::steelReview, "{'base': '4130'" + rest);
        JsonNode sent = Asked.answer(Engine::steelReview, "{'base': " + named.at("/base/composition") + rest);
        for (String part : List.of("composition", "carbonEquivalents", "idealDiameter", "cooling", "hardness")) {
            assertEquals(named.at("/base/" + part), sent.at("/base/" + part), part);
        }
        assertEquals("own analysis", sent.at("/base/name").asText());
        assertTrue(sent.at("/base/leastTensileStrength").isMissingNode());
    }

    @Test
    void analysesAreCalledByTheirPlace() throws IOException {
        JsonNode fillers = Asked.answer(
                        Engine::steelReview,
                        "{'wall': '2 mm', 'fillers': [{'C': 0.05, 'Mn': 1.1}, 'ER70S-2', {'C': 0.09, 'Mn': 1.8}]}")
                .get("fillers");
        List<String> names = new ArrayList<>();
        fillers.forEach(filler -> names.add(filler.get("filler").asText()));
        names.sort(null);
        assertEquals(List.of("ER70S-2", "own analysis 1", "own analysis 2"), names);
    }

    /** Whatever is taken, no figure is infinite or no number, and the ranks count up. */
    @Test
    void noFigureIsEverOtherThanANumber() throws IOException {
        long seed = 20261;
        Random random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            String request = String.format(
                    Locale.ROOT,
                    "{'base': %s, 'wall': '%.3f mm', 'dilution': %.4f, 'fillers': [%s, 'ER70S-2', %s], 'arc': {'current':"
                            + " '%.1f A', 'voltage': '%.1f V', 'travelSpeed': '%.2f mm/s'}, 'hydrogen': '%.2f mL/100g',"
                            + " 'startTemperature': '%.1f degC'}",
                    analysis(random, 1),
                    0.2 + 99 * Math.pow(random.nextDouble(), 4),
                    0.999 * random.nextDouble(),
                    analysis(random, 3),
                    analysis(random, 1),
                    5 + 495 * random.nextDouble(),
                    5 + 35 * random.nextDouble(),
                    0.1 + 49 * random.nextDouble(),
                    0.1 + 99 * random.nextDouble(),
                    -30 + 480 * random.nextDouble());
            String where = "seed " + seed + ", run " + i + ": " + request;
            JsonNode answer = Asked.answer(Engine::steelReview, request, i % 2 == 0 ? UnitSystem.SI : UnitSystem.US);
            finite(answer, where);
            for (int rank = 1; rank <= 3; rank++) {
                assertEquals(
                        rank, answer.get("fillers").get(rank - 1).get("rank").asInt(), where);
            }
            double share = answer.at("/base/hardness/martensiteShare").asDouble();
            assertTrue(share >= 0 && share <= 1, where);
        }
    }

    private static String analysis(Random random, double alloy) {
        return String.format(
                Locale.ROOT,
                "{'C': %.3f, 'Mn': %.2f, 'Si': %.2f, 'Cr': %.2f, 'Mo': %.2f, 'Ni': %.2f, 'B': %.4f}",
                0.001 + 1.19 * random.nextDouble(),
                3 * random.nextDouble(),
                2 * random.nextDouble(),
                alloy * random.nextDouble(),
                2 * random.nextDouble(),
                alloy * random.nextDouble(),
                0.02 * random.nextDouble());
    }

    private static void finite(JsonNode node, String where) {
        if (node.isNumber()) {
            assertTrue(Double.isFinite(node.asDouble()), where);
        }
        if (node.isTextual()) {
            assertFalse(node.asText().contains("NaN") || node.asText().contains("Infinity"), where + node);
        }
        node.forEach(child -> finite(child, where));
    }
}
