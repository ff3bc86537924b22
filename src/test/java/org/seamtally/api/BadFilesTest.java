package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.seamtally.batch.BadFile;
import org.seamtally.batch.Form;

/** Bad job files over HTTP, straight through and kept: a clear problem each, and nothing of a refused file is kept. */
@QuarkusTest
class BadFilesTest {

    private static final String STRAIGHT = "/v1/frame-estimates";
    private static final String KEPT = "/v1/batches";

    @BeforeEach
    void tablesAreMade() throws InterruptedException {
        Frames.await(
                "the tables are made", () -> given().get("/q/health/group/kept").statusCode() == 200);
    }

    private static Response post(BadFile file, String path) {
        return Frames.request(file.form() == Form.CSV ? "text/csv" : "application/x-ndjson")
                .body(file.bytes())
                .post(path);
    }

    private static void assertRefused(BadFile file, Response response) {
        assertEquals(422, response.statusCode(), response.asString());
        assertEquals("application/problem+json", response.contentType());
        JsonNode problem = Document.read(response.asString());
        assertEquals(Set.of(), Document.live().misfits(problem, "ProblemReport"));
        assertEquals(file.key(), Frames.violation(problem));
    }

    private static void assertResults(BadFile file, String results) {
        List<JsonNode> lines = results.lines().map(Document::read).toList();
        assertEquals(file.done() + file.refused() + 1, lines.size(), results);
        List<String> keys = lines.stream()
                .filter(line -> line.has("problem"))
                .map(line -> Frames.violation(line.path("problem")))
                .toList();
        assertEquals(file.key() == null ? List.of() : List.of(file.key()), keys);
        JsonNode trailer = lines.get(lines.size() - 1).path("trailer");
        assertEquals(file.done(), trailer.path("done").asInt(-1));
        assertEquals(file.refused(), trailer.path("refused").asInt(-1));
        assertEquals(file.done() + file.refused(), trailer.path("read").asInt(-1));
    }

    @ParameterizedTest
    @EnumSource
    void straightThrough(BadFile file) {
        Response response = post(file, STRAIGHT);
        if (file.isRefusedWhole()) {
            assertRefused(file, response);
        } else {
            assertEquals(200, response.statusCode());
            assertResults(file, response.asString());
        }
    }

    @ParameterizedTest
    @EnumSource
    void kept(BadFile file) throws InterruptedException {
        String before = given().get(KEPT).asString();
        Response response = post(file, KEPT);
        if (file.isRefusedWhole()) {
            assertRefused(file, response);
            assertEquals(before, given().get(KEPT).asString(), "nothing of it is kept");
        } else {
            assertEquals(202, response.statusCode(), response.asString());
            String batch = response.header("Location");
            Frames.await(
                    "it is done",
                    () -> "done".equals(given().get(batch).jsonPath().getString("state")));
            assertResults(file, given().get(batch + "/results").asString());
        }
    }
}
