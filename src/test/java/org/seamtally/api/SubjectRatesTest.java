package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Where the service asks for tokens, one subject may ask so often and no oftener, and no other is hindered by it. */
@QuarkusTest
@TestProfile(SubjectRatesTest.ThreeAtOnce.class)
class SubjectRatesTest {

    public static final class ThreeAtOnce implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            Map<String, String> settings = new HashMap<>(new Keyed().getConfigOverrides());
            // a token comes back after 1000 s: longer than the test takes on any machine
            settings.put("seamtally.requests.per-second", "0.001");
            settings.put("seamtally.requests.burst", "3");
            return settings;
        }
    }

    private static Response ask(String subject) {
        return Frames.request("application/json")
                .header(
                        "Authorization",
                        "Bearer "
                                + Tokens.of("Northside Tube", "estimator")
                                        .with("sub", subject)
                                        .signed())
                .body(Frames.frame(1).getBytes())
                .post("/v1/frame-estimates");
    }

    @Test
    void aSubjectMayAskSoOftenAndOneMoreIsRefused() {
        for (int i = 0; i < 3; i++) {
            assertEquals(200, ask("busy").statusCode());
        }
        Response refused = ask("busy");
        assertEquals(429, refused.statusCode(), refused.asString());
        assertEquals("application/problem+json", refused.contentType());
        long wait = Long.parseLong(refused.header("Retry-After"));
        assertTrue(wait > 0 && wait <= 1000, wait + " s");
        JsonNode problem = Document.read(refused.asString());
        assertEquals("/problems/too-many-requests", problem.path("type").asText());
        assertEquals(
                "/requests/" + refused.header(RequestId.HEADER),
                problem.path("instance").asText());
        assertEquals(200, ask("another").statusCode());
    }
}
