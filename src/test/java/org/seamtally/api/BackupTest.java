package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import org.junit.jupiter.api.Test;

/** A backup that the service cannot make is refused with a problem, and a link makes none. */
@QuarkusTest
class BackupTest {

    @Test
    void whatIsInNoFileIsRefused() {
        Response answer = given().post("/q/backup");
        assertEquals(409, answer.statusCode(), answer.asString());
        assertEquals("application/problem+json", answer.contentType());
        JsonNode problem = Document.read(answer.asString());
        assertEquals(java.util.Set.of(), Document.live().misfits(problem, "ProblemReport"));
        assertEquals("/problems/not-in-a-file", problem.path("type").asText());
    }

    @Test
    void aLinkMakesNone() {
        assertEquals(405, given().get("/q/backup").statusCode());
    }
}
