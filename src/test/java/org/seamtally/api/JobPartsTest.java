package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Settings and a job file in one body. */
@QuarkusTest
class JobPartsTest {

    private static final String TYPE = "Content-Type: multipart/form-data; boundary=b0";
    private static final String SETTINGS = "{\"steel\":{\"base\":\"1020\"}}";
    private static final String END = "--b0--\r\n";

    @Inject
    OpenStreams streams;

    private static String head(String name, String type) {
        return "--b0\r\nContent-Disposition: form-data; name=\"" + name + "\"; filename=\"x\"\r\n"
                + (type.isEmpty() ? "" : "Content-Type: " + type + "\r\n") + "\r\n";
    }

    private static String part(String name, String type, String content) {
        return head(name, type) + content + "\r\n";
    }

    /** What a body is answered with, once it is certain that it is a problem. */
    private static JsonNode problem(int status, String path, String type, String body) throws IOException {
        try (LiveRequest live = new LiveRequest("POST", path, type)) {
            live.send(body).end();
            String text = live.text();
            assertEquals(status, live.status(), text);
            assertEquals("application/problem+json", live.header("Content-Type"));
            JsonNode problem = Document.read(text);
            assertEquals(Set.of(), Document.live().misfits(problem, "ProblemReport"), text);
            return problem;
        }
    }

    /** With {@code -F settings=@FILE} and {@code -F 'settings=<FILE'} curl names no type, or one that says nothing. */
    @ParameterizedTest
    @ValueSource(strings = {"", "application/octet-stream", "application/json; charset=utf-8"})
    void settingsAreJsonWhateverAClientCallsThem(String type) throws IOException {
        try (LiveRequest live = new LiveRequest("POST", "/v1/frame-estimates", TYPE)) {
            live.send(part("settings", type, SETTINGS) + part("jobs", "application/x-ndjson", Frames.line(1)) + END)
                    .end();
            assertTrue(live.lines().get(0).contains("\"1020\""));
        }
    }

    @Test
    void settingsGoIntoEveryFrameThatLeavesThemOut() throws IOException {
        String own = "{\"steel\":{\"base\":\"4130\"}," + Frames.frame(2).substring(1) + "\n";
        try (LiveRequest live = new LiveRequest("POST", "/v1/frame-estimates", TYPE)) {
            live.send(part("settings", "application/json", SETTINGS)
                            + part("jobs", "application/x-ndjson", Frames.line(1) + own)
                            + END)
                    .end();
            List<String> lines = live.lines();
            assertEquals(3, lines.size(), lines.toString());
            String alone = given().contentType("application/json")
                    .body("{\"steel\":{\"base\":\"1020\"}," + Frames.frame(1).substring(1))
                    .post("/v1/frame-estimates")
                    .asString();
            assertEquals(Document.read(alone), Document.read(lines.get(0)).path("estimate"));
            assertFalse(lines.get(1).contains("\"1020\""), "a part of its own goes first");
        }
    }

    @Test
    void aFrameIsAnsweredBeforeTheNextOneIsSent() throws IOException {
        try (LiveRequest live = new LiveRequest("POST", "/v1/frame-estimates", TYPE)) {
            live.send(part("settings", "application/json", SETTINGS));
            live.send(head("jobs", "application/x-ndjson"));
            for (int i = 1; i <= 3; i++) {
                live.send(Frames.line(i));
                assertEquals(i, Document.read(live.line()).path("line").asInt());
            }
            live.send("\r\n" + END).end();
            assertTrue(live.line().startsWith("{\"trailer\":"));
        }
    }

    @Test
    void aBodyThatEndsWithoutItsLastBoundaryIsCutAndHasNoTrailer() throws Exception {
        int free = streams.free();
        try (Logged logged = new Logged();
                LiveRequest live = new LiveRequest("POST", "/v1/frame-estimates", TYPE)) {
            live.send(part("jobs", "application/x-ndjson", Frames.line(1))).end();
            List<String> lines = live.linesUntilCut();
            assertEquals(1, lines.size(), lines.toString());
            assertEquals(1, Document.read(lines.get(0)).path("line").asInt());
            Frames.await("the stream is closed", () -> streams.free() == free);
            assertEquals(List.of(), logged.errors());
        }
    }

    @Test
    void aBatchOfABodyThatEndsWithoutItsLastBoundaryIsNotKept() throws IOException {
        assertEquals(
                "/problems/not-multipart",
                problem(400, "/v1/batches", TYPE, part("jobs", "application/x-ndjson", Frames.line(1)))
                        .path("type")
                        .asText());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "multipart/form-data",
                "multipart/form-data; boundary=\"\"",
                "multipart/form-data; boundary=xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx",
                "multipart/form-data; boundary=other"
            })
    void aBodyThatIsNoneIsABadRequest(String type) throws IOException {
        for (String path : List.of("/v1/frame-estimates", "/v1/batches")) {
            assertEquals(
                    "/problems/not-multipart",
                    problem(
                                    400,
                                    path,
                                    "Content-Type: " + type,
                                    part("jobs", "application/x-ndjson", Frames.line(1)) + END)
                            .path("type")
                            .asText());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "settings, application/json, missing",
        "job, text/csv, unknown-field",
        "jobs, '', unknown-word",
        "jobs, application/octet-stream, unknown-word",
        "jobs, garbage, unknown-word",
        "settings, text/plain, unknown-word"
    })
    void otherPartsAreRefused(String name, String type, String key) throws IOException {
        for (String path : List.of("/v1/frame-estimates", "/v1/batches")) {
            JsonNode problem = problem(422, path, TYPE, part(name, type, "{}") + END);
            assertEquals(key, Frames.violation(problem), problem.toString());
        }
    }

    @Test
    void theOrderIsFixedAndTheCharsetToo() throws IOException {
        for (String path : List.of("/v1/frame-estimates", "/v1/batches")) {
            problem(415, path, TYPE, part("jobs", "text/csv; charset=windows-1252", Frames.rows(1)) + END);
            problem(415, path, TYPE, part("settings", "application/json; charset=utf-16", "{}") + END);
            JsonNode twice = problem(
                    422,
                    path,
                    TYPE,
                    part("settings", "application/json", "{}") + part("settings", "application/json", "{}") + END);
            assertEquals("unknown-field", Frames.violation(twice));
        }
    }

    @Test
    void settingsThatAreWrongOrTooLargeAreRefusedWhole() throws IOException {
        String jobs = part("jobs", "application/x-ndjson", Frames.line(1)) + END;
        for (String path : List.of("/v1/frame-estimates", "/v1/batches")) {
            problem(422, path, TYPE, part("settings", "application/json", "{\"colour\":1}") + jobs);
            problem(400, path, TYPE, part("settings", "application/json", "{") + jobs);
            problem(413, path, TYPE, part("settings", "application/json", " ".repeat(2 << 20)) + jobs);
        }
    }
}
