package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Where the database is away, what is kept says so, and estimates go on. */
@QuarkusTest
@TestProfile(WithoutDatabaseTest.NoDatabase.class)
class WithoutDatabaseTest {

    public static final class NoDatabase implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            // nothing listens on the port that is reserved for a service nobody runs
            return Map.of("seamtally.database.url", "jdbc:postgresql://127.0.0.1:1/nothing");
        }
    }

    private static final String ID = "/v1/batches/00000000-0000-4000-8000-000000000000";

    private static void unavailable(Response response) {
        assertEquals(503, response.statusCode(), response.asString());
        assertEquals("application/problem+json", response.contentType());
        assertEquals("5", response.header("Retry-After"));
        JsonNode problem = Document.read(response.asString());
        assertEquals(Set.of(), Document.live().misfits(problem, "ProblemReport"));
        assertEquals("/problems/unavailable", problem.path("type").asText());
    }

    @Test
    void whatIsKeptIsNotToBeHadNow() {
        unavailable(given().get("/v1/batches"));
        for (String part : List.of("", "/results", "/refusals", "/summary", "/events")) {
            unavailable(given().get(ID + part));
        }
        unavailable(given().delete(ID));
        unavailable(Frames.request("application/x-ndjson")
                .body(Frames.line(1).getBytes())
                .post("/v1/batches"));
        unavailable(Frames.request("application/x-ndjson")
                .header("Idempotency-Key", "k")
                .body(Frames.line(1).getBytes())
                .post("/v1/batches"));
    }

    @Test
    void estimatesAndStreamsGoOnAndTheServiceIsReady() {
        assertEquals(
                200,
                given().contentType("application/json")
                        .body(Frames.frame(1))
                        .post("/v1/frame-estimates")
                        .statusCode());
        assertEquals(
                200,
                Frames.request("application/x-ndjson")
                        .body(Frames.line(1).getBytes())
                        .post("/v1/frame-estimates")
                        .statusCode());
        assertEquals(200, given().get("/q/health/ready").statusCode());
        Response kept = given().get("/q/health/group/kept");
        assertEquals(503, kept.statusCode());
        assertEquals("DOWN", kept.jsonPath().getString("status"));
    }
}
