package org.seamtally.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.seamtally.seam.Joint;
import org.seamtally.wire.Json;

class FirstEstimateTest {

    @Test
    void aJointOfEachKindIsWorkedOut() throws Exception {
        JsonNode answer = Json.mapper().readTree(FirstEstimate.answer());
        Set<String> kinds = new TreeSet<>();
        answer.get("joints").forEach(joint -> kinds.add(joint.get("kind").textValue()));
        assertEquals(Joint.class.getPermittedSubclasses().length, kinds.size(), kinds.toString());
        assertEquals("USD", answer.get("cost").get("currency").textValue());
    }
}
