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

/** What a set-up and a joint's own set-up take, asked about by themselves. */
class GasInquiryTest {

    private static final Engine ENGINE = new Engine("test");

    private static <A> JsonNode ask(Ask<A> door, String request) throws IOException {
        Outcome<?> outcome =
                door.ask(new ByteArrayInputStream(request.getBytes(StandardCharsets.UTF_8)), UnitSystem.SI);
        assertTrue(outcome instanceof Outcome.Answered<?>, outcome.toString());
        return Json.mapper().valueToTree(((Outcome.Answered<?>) outcome).answer());
    }

    private interface Ask<A> {
        Outcome<A> ask(java.io.InputStream in, UnitSystem units) throws IOException;
    }

    @Test
    void aJointWithAMeterAtTheMachineStoresNothingWhateverTheRequestsOwnSetUpDoes() throws IOException {
        JsonNode answer = ask(ENGINE::gasLoss, """
                {"joint": {"kind": "plug", "holeDiameter": "8 mm", "depth": "2 mm", "gas": {"meterAt": "machine"}}}""");
        assertEquals(0, answer.at("/joint/storedGas/value").doubleValue());
        assertEquals(0, answer.at("/joint/startSurge/value").doubleValue());
        assertTrue(answer.at("/steady/storedGas/value").doubleValue() > 0.7, "the request's own hose stores gas");
    }

    @Test
    void aLeakIsSaidNotToBeCountedWhereNoLabourIsKnown() throws IOException {
        JsonNode answer = ask(ENGINE::gasLoss, "{\"gas\": {\"leak\": \"2 L/min\"}}");
        assertTrue(answer.path("cautions").toString().contains("leak-not-counted"), answer.toString());
        assertFalse(ask(ENGINE::gasLoss, "{}").path("cautions").toString().contains("leak-not-counted"));
    }

    @Test
    void aStartTakesTheSameByItselfAsInAComparisonEvenWhereTheGasNeverShuts() throws IOException {
        for (String off : new String[] {"5 s", "15 s", "40 s"}) {
            JsonNode alone = ask(ENGINE::gasLoss, """
                    {"gas": {"postFlow": "9 s"}, "burnTime": "22 s", "arcOffTime": "%s"}""".formatted(off));
            JsonNode compared = ask(ENGINE::comparison, """
                    {"gas": {"postFlow": "9 s"}, "setUps": [{"name": "a"}, {"name": "b"}],
                     "duty": {"startsPerShift": 100, "burnTime": "22 s", "arcOffTime": "%s", "shiftsPerYear": 200}}""".formatted(off));
            assertEquals(compared.at("/setUps/0/perStart"), alone.at("/perStart"), "with " + off + " between two arcs");
        }
    }

    @Test
    void severalSetUpsOfAFrameAreCautionedWithTheMarksOfTheirJoints() throws IOException {
        JsonNode answer = ask(ENGINE::frameEstimate, """
                {"frame": {"joints": [
                  {"mark": "A", "kind": "plug", "holeDiameter": "8 mm", "depth": "2 mm"},
                  {"mark": "B", "kind": "plug", "holeDiameter": "8 mm", "depth": "2 mm",
                   "gas": {"hose": {"insideDiameter": "1 mm", "length": "60 m"}}}]}}""");
        String cautions = answer.path("cautions").toString();
        assertTrue(cautions.contains("\"B: the set flow cannot be reached"), cautions);
        assertTrue(cautions.contains("\"A: at each start"), cautions);
    }
}
