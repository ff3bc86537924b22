package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What the quote says of a joint's metal, its fillet and a preheat that nobody asked for. */
class MetalInTheQuoteTest {

    private static final String T = "{'outsideDiameter': '1.5 in', 'wall': '%s'}";

    private static JsonNode quote(String joint, String rest) throws IOException {
        return Asked.answer(Engine::frameEstimate, "{'frame': {'joints': [" + joint + "]}" + rest + "}");
    }

    private static String tubeToPlate(String wall, String more) {
        return "{'kind': 'tube-to-plate', 'branch': " + T.formatted(wall) + ", 'plate': {'thickness': '0.095 in'}"
                + more + "}";
    }

    private static List<String> causes(JsonNode part) {
        List<String> causes = new ArrayList<>();
        part.get("cautions").forEach(caution -> causes.add(caution.get("cause").asText()));
        return causes;
    }

    /** The sample frame: figures by hand from the clause (AWS D1.1, from memory): 1.5, 1.0, 1.1 and 1.2 of the wall. */
    @Test
    void theFilletOfTheSampleFrame() throws IOException {
        JsonNode answer =
                Asked.answer(Engine::frameEstimate, Files.readString(Path.of("sample-jobs/trail-buggy-rear-bay.json")));
        JsonNode fillet = answer.at("/joints/0/fillet");
        assertFalse(fillet.get("meets").asBoolean());
        assertEquals(1.5 * 0.095 * 25.4, fillet.at("/leastLeg/value").asDouble(), 1e-6);
        double[] asked = {1.5, 1.0, 1.1, 1.2};
        double shares = 0;
        for (int i = 0; i < 5; i++) {
            JsonNode zone = fillet.get("zones").get(i);
            shares += zone.get("share").asDouble();
            if (i < 4) {
                assertEquals(asked[i] * 2.413, zone.at("/legAskedFor/value").asDouble(), 1e-6);
                assertEquals(i > 0, zone.get("meets").asBoolean());
            } else {
                assertNull(zone.get("meets"), "over 120° a bevel is asked for");
            }
        }
        assertEquals(1, shares, 1e-6);
        // on equal tubes at 45° the share over 135° is the groove share that the seam itself gives
        double below60 = fillet.at("/zones/0/share").asDouble();
        assertEquals(
                fillet.get("outsideShare").asDouble() - below60,
                answer.at("/joints/0/seam/grooveShare").asDouble(),
                1e-6);
        assertTrue(causes(answer.at("/joints/0")).contains("fillet-small"));
        assertTrue(answer.at("/joints/4/fillet").isMissingNode(), "a plug has no fillet");
        assertTrue(causes(answer.at("/joints/4")).contains("plug-cooling"));
        // a square joint has one angle all along: 0.7071 of the leg
        JsonNode square = answer.at("/joints/1/fillet");
        assertEquals(1, square.get("zones").size());
        assertEquals(
                0.125 * 25.4 * Math.sqrt(0.5), square.at("/leastThroat/value").asDouble(), 1e-6);
        assertEquals(0, square.get("outsideShare").asDouble());
        assertEquals(2, square.get("scope").size());
    }

    @Test
    void theShopIsCautionedOnce() throws IOException {
        List<String> causes = causes(quote(tubeToPlate("0.065 in", "") + "," + tubeToPlate("0.083 in", ""), ""));
        for (String cause : List.of(
                "fume",
                "argon-in-closed-spaces",
                "ultraviolet",
                "cleanliness",
                "chlorinated-cleaner",
                "closed-members")) {
            assertEquals(1, causes.stream().filter(cause::equals).count(), cause);
        }
    }

    @Test
    void thinNormalizedTubeWithLowCarbonRodIsWeldedCold() throws IOException {
        JsonNode joint = quote(tubeToPlate("0.095 in", ""), "").at("/joints/0");
        assertFalse(causes(joint).contains("preheat-advised"));
        assertTrue(joint.at("/preheatAdvice").isMissingNode());
        assertTrue(causes(joint).contains("hard-zone"));
    }

    @Test
    void anAdvisedPreheatIsPricedAndNotCounted() throws IOException {
        String prices =
                ", 'preheat': {'hold': '10 min'}, 'prices': {'currency': 'USD', 'labour': '60.00/h', 'fuel': '2.00/kg'}";
        String strong = ", 'filler': {'classification': 'ER80S-D2'}" + prices;
        JsonNode advised = quote(tubeToPlate("0.095 in", ", 'count': 3"), strong);
        JsonNode part = advised.at("/joints/0/preheatAdvice");
        assertEquals(150, part.at("/temperature/value").asDouble(), 1e-6);
        assertTrue(part.at("/energy/value").asDouble() > 0);
        assertEquals(600, part.at("/time/value").asDouble(), 1e-9);
        // ten minutes at 60.00/h are 10.00; the propane of some 500 kJ is a few cents
        assertEquals(10.02, Double.parseDouble(part.get("amount").asText()), 0.04);
        assertTrue(causes(advised.at("/joints/0")).contains("preheat-advised"));
        assertTrue(causes(advised).contains("preheat-advised"));
        assertTrue(advised.at("/perFrame/preheat").isMissingNode()
                || advised.at("/perFrame/preheat/energy/value").asDouble() == 0);
        // asked for, the price rises by what was said it would, and the advice is gone
        JsonNode asked = quote(
                tubeToPlate("0.095 in", ", 'count': 3, 'preheated': true"),
                strong.replace("'hold'", "'temperature': '150 degC', 'hold'"));
        double rise =
                asked.at("/cost/total").asDouble() - advised.at("/cost/total").asDouble();
        String said = text(advised, "preheat-advised");
        assertTrue(said.contains(String.format(java.util.Locale.ROOT, "USD %.2f", rise)), said + " but " + rise);
        assertFalse(causes(asked.at("/joints/0")).contains("preheat-advised"));
        assertEquals(
                part.at("/energy/value").asDouble(),
                asked.at("/joints/0/preheat/energy/value").asDouble(),
                1e-6);
    }

    private static String text(JsonNode part, String cause) {
        for (JsonNode caution : part.get("cautions")) {
            if (caution.get("cause").asText().equals(cause)) {
                return caution.get("text").asText();
            }
        }
        throw new AssertionError(cause + " is not in " + part.get("cautions"));
    }

    @Test
    void aPreheatBelowTheAdviceIsSaid() throws IOException {
        JsonNode joint = quote(
                        tubeToPlate("0.095 in", ", 'preheated': true"),
                        ", 'filler': {'classification': 'ER80S-D2'}, 'preheat': {'temperature': '100 degC'}")
                .at("/joints/0");
        assertTrue(causes(joint).contains("preheat-below-advice"));
        assertFalse(causes(joint).contains("preheat-advised"));
        assertTrue(joint.at("/preheatAdvice").isMissingNode());
    }

    @Test
    void anAlloyBeyondTheFormulasNeverFailsAQuote() throws IOException {
        JsonNode answer =
                quote(tubeToPlate("0.095 in", ""), ", 'steel': {'base': {'C': 0.5, 'Si': 2, 'Mo': 2, 'Ni': 10}}");
        assertTrue(causes(answer.at("/joints/0")).contains("steel-not-reviewed"));
        // and neither does a preheat from which t8/5 is no longer defined
        JsonNode hot =
                quote(tubeToPlate("0.095 in", ", 'preheated': true"), ", 'preheat': {'temperature': '550 degC'}");
        assertTrue(causes(hot.at("/joints/0")).contains("steel-not-reviewed"));
        assertTrue(hot.at("/joints/0/fillet/zones").size() > 0);
    }

    @Test
    void aJointsOwnSteelIsReviewed() throws IOException {
        JsonNode answer = quote(
                tubeToPlate("0.095 in", ", 'steel': {'base': '4130 HT-150'}") + ","
                        + tubeToPlate("0.095 in", ", 'steel': {'base': '1020', 'restraint': 'low'}"),
                "");
        assertTrue(causes(answer.at("/joints/0")).contains("softened-zone"));
        assertFalse(causes(answer.at("/joints/1")).contains("softened-zone"));
        List<String> assumed = new ArrayList<>();
        answer.get("assumptions").forEach(a -> assumed.add(a.get("path").asText()));
        assertFalse(assumed.contains("steel.base"), "every joint brings its own");
        assertTrue(assumed.contains("steel.restraint"));
    }

    @Test
    void the4130OfFramesIsAssumedOnlyWhereNoSteelWasGiven() throws IOException {
        List<String> assumed = new ArrayList<>();
        quote(tubeToPlate("0.095 in", ""), "")
                .get("assumptions")
                .forEach(a -> assumed.add(
                        a.get("path").asText() + "=" + a.get("value").asText()));
        assertTrue(assumed.contains("steel.base=4130"), assumed.toString());
    }

    @Test
    void aPreheatAskedAboutByItselfTakesTheRecommendedTemperature() throws IOException {
        JsonNode answer = Asked.answer(
                Engine::preheat,
                "{'joint': " + tubeToPlate("0.095 in", "") + ", 'filler': {'classification': 'ER80S-D2'}}");
        assertEquals("preheat", answer.at("/recommended/verdict").asText());
        assertEquals(150, answer.at("/recommended/advised/value").asDouble(), 1e-6);
        assertEquals(2, answer.at("/recommended/methods").size());
        assertTrue(answer.at("/preheat/energy/value").asDouble() > 0);
        boolean listed = false;
        for (JsonNode assumption : answer.get("assumptions")) {
            listed |= assumption.get("path").asText().equals("preheat.temperature")
                    && assumption.get("value").asText().equals("150 degC");
        }
        assertTrue(listed);
    }

    @Test
    void whereNoPreheatIsAdvisedATemperatureIsNeeded() throws IOException {
        String joint = "{'joint': " + tubeToPlate("0.095 in", "");
        Violation violation = Asked.refused(Engine::preheat, joint + "}").get(0);
        assertEquals("preheat.temperature", violation.path());
        assertEquals("missing", violation.key());
        JsonNode given = Asked.answer(Engine::preheat, joint + ", 'preheat': {'temperature': '200 degC'}}");
        assertEquals("none", given.at("/recommended/verdict").asText());
        // in a quote a joint to be preheated needs one, advice or none
        assertEquals(
                "missing",
                Asked.refused(
                                Engine::frameEstimate,
                                "{'frame': {'joints': [" + tubeToPlate("0.095 in", ", 'preheated': true")
                                        + "]}, 'filler': {'classification': 'ER80S-D2'}}")
                        .get(0)
                        .key());
    }
}
