package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Where the provider whose keys check tokens cannot be reached, nobody comes in, and that is said. */
@QuarkusTest
@TestProfile(ProviderAwayTest.NoProvider.class)
class ProviderAwayTest {

    public static final class NoProvider implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            // nothing listens on the port that is reserved for a service nobody runs
            return Map.of("seamtally.access.provider", "http://127.0.0.1:1");
        }
    }

    @Test
    void aTokenCannotBeCheckedNow() {
        Response answer = given().header(
                        "Authorization", "Bearer " + Tokens.of("x", "estimator").signed())
                .get("/v1/quotes");
        assertEquals(503, answer.statusCode(), answer.asString());
        assertEquals("application/problem+json", answer.contentType());
        assertEquals("/problems/unavailable", answer.path("type"));
        assertEquals("5", answer.header("Retry-After"));
    }

    @Test
    void itIsReadyAllTheSame() {
        assertEquals(200, given().get("/q/health/ready").statusCode());
    }
}
