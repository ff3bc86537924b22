package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Kept batches over HTTP, from the upload to the results. */
@QuarkusTest
class BatchesTest {

    private static final String PATH = "/v1/batches";
    private static final String NDJSON = "application/x-ndjson";

    @Inject
    OpenStreams streams;

    @Inject
    BatchEvents events;

    @BeforeEach
    void tablesAreMade() throws InterruptedException {
        Frames.await(
                "the tables are made", () -> given().get("/q/health/group/kept").statusCode() == 200);
    }

    private static Response post(String type, byte[] body) {
        return Frames.request(type).body(body).post(PATH);
    }

    private static Response post(String type, String body) {
        return post(type, body.getBytes(StandardCharsets.UTF_8));
    }

    private static Response keyed(String key, String body) {
        return Frames.request(NDJSON)
                .header("Idempotency-Key", key)
                .body(body.getBytes(StandardCharsets.UTF_8))
                .post(PATH);
    }

    private static JsonNode problem(int status, Response response) {
        assertEquals(status, response.statusCode(), response.asString());
        assertEquals("application/problem+json", response.contentType());
        JsonNode problem = Document.read(response.asString());
        assertEquals(Set.of(), Document.live().misfits(problem, "ProblemReport"));
        return problem;
    }

    private static JsonNode json(int status, Response response, String schema) {
        assertEquals(status, response.statusCode(), response.asString());
        assertEquals("application/json", response.contentType().replaceAll(";.*", ""));
        JsonNode answer = Document.read(response.asString());
        assertEquals(Set.of(), Document.live().misfits(answer, schema));
        return answer;
    }

    /** Keeps a file and waits until its batch has ended. */
    private static String done(String type, String body) throws InterruptedException {
        Response response = post(type, body);
        JsonNode batch = json(202, response, "BatchAnswer");
        String id = batch.path("id").asText();
        assertEquals(PATH + "/" + id, response.header("Location"));
        awaitState(id, "done");
        return id;
    }

    private static void awaitState(String id, String state) throws InterruptedException {
        Frames.await(
                id + " is " + state,
                () -> state.equals(given().get(PATH + "/" + id).jsonPath().getString("state")));
    }

    private static int kept() {
        int all = 0;
        String after = "";
        while (after != null) {
            JsonNode page = json(200, given().get(PATH + "?limit=100" + after), "BatchList");
            all += page.path("items").size();
            after = page.has("next") ? "&after=" + page.path("next").asText() : null;
        }
        return all;
    }

    @Test
    void aFileIsKeptWorkedOnAndAskedFor() throws InterruptedException {
        String body = Frames.lines(250) + Frames.BAD_LINE;
        String id = done(NDJSON, body);
        JsonNode batch = json(200, given().get(PATH + "/" + id), "BatchAnswer");
        assertEquals(251, batch.at("/counts/frames").asInt());
        assertEquals(251, batch.at("/counts/read").asInt());
        assertEquals(250, batch.at("/counts/done").asInt());
        assertEquals(1, batch.at("/counts/refused").asInt());
        assertEquals("si", batch.path("units").asText());
        assertEquals("ndjson", batch.path("form").asText());
        Response results = given().get(PATH + "/" + id + "/results");
        assertEquals(200, results.statusCode());
        assertEquals(NDJSON, results.contentType());
        String straight = Frames.request(NDJSON)
                .body(body.getBytes(StandardCharsets.UTF_8))
                .post("/v1/frame-estimates")
                .asString();
        assertEquals(straight, results.asString());
        List<String> refusals =
                given().get(PATH + "/" + id + "/refusals").asString().lines().toList();
        assertEquals(2, refusals.size());
        assertEquals(251, Document.read(refusals.get(0)).path("line").asInt());
        JsonNode summary = json(200, given().get(PATH + "/" + id + "/summary"), "BatchSummaryAnswer");
        assertEquals(250, summary.at("/batch/counts/done").asInt());
        assertTrue(summary.at("/filler/consumed/value").asDouble() > 0);
    }

    @Test
    void resultsAreToBeHadAsATableAndInOtherUnits() throws InterruptedException {
        String id = done("text/csv", Frames.rows(3));
        Response table = given().accept("text/csv").get(PATH + "/" + id + "/results");
        assertEquals("text/csv;charset=UTF-8", table.contentType());
        List<String> lines = table.asString().lines().toList();
        assertEquals(5, lines.size());
        assertTrue(lines.get(4).startsWith("trailer,"), lines.get(4));
        assertEquals("csv", given().get(PATH + "/" + id).jsonPath().getString("form"));
        String us = given().get(PATH + "/" + id + "/results?units=us").asString();
        assertEquals(
                "in",
                Document.read(us.lines().findFirst().orElseThrow())
                        .at("/estimate/perFrame/seam/length/unit")
                        .asText());
        problem(400, given().get(PATH + "/" + id + "/results?units=uk"));
        problem(406, given().accept("application/json").get(PATH + "/" + id + "/results"));
        problem(406, given().accept("text/csv").get(PATH + "/" + id + "/refusals"));
    }

    @Test
    void theUnitsOfAnUploadAreThoseOfItsResults() throws InterruptedException {
        String id = json(
                        202,
                        Frames.request(NDJSON)
                                .body(Frames.line(1).getBytes(StandardCharsets.UTF_8))
                                .post(PATH + "?units=us"),
                        "BatchAnswer")
                .path("id")
                .asText();
        awaitState(id, "done");
        String line = given().get(PATH + "/" + id + "/results")
                .asString()
                .lines()
                .findFirst()
                .orElseThrow();
        assertEquals(
                "in",
                Document.read(line).at("/estimate/perFrame/seam/length/unit").asText());
    }

    @Test
    void aBatchIsListedByTheNameItsSenderGaveIt() {
        String name = "Aufträge, week 12 & 13.ndjson";
        byte[] body = Frames.line(1).getBytes(StandardCharsets.UTF_8);
        JsonNode made = json(
                202, Frames.request(NDJSON).queryParam("name", name).body(body).post(PATH), "BatchAnswer");
        assertEquals(name, made.path("name").asText());
        JsonNode listed = json(200, given().get(PATH + "?limit=1"), "BatchList");
        assertEquals(name, listed.at("/items/0/name").asText());
        assertFalse(json(202, post(NDJSON, Frames.line(1)), "BatchAnswer").has("name"));
        // rare characters are one each
        String longest = "\ud83d\ude9c".repeat(200);
        JsonNode rare = json(
                202,
                Frames.request(NDJSON).queryParam("name", longest).body(body).post(PATH),
                "BatchAnswer");
        assertEquals(longest, rare.path("name").asText());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"name=", "name=%20", "name=a%0Ab", "name=a%00b", "name=a%C2%85", "name=a&name=b", "name=LONG"})
    void aNameThatIsNoneIsRefused(String query) {
        Response response = Frames.request(NDJSON)
                .urlEncodingEnabled(false)
                .body(Frames.line(1).getBytes(StandardCharsets.UTF_8))
                .post(PATH + "?" + query.replace("LONG", "n".repeat(201)));
        assertEquals("/problems/bad-query", problem(400, response).path("type").asText());
    }

    @Test
    void askingForTheHeadOfResultsTakesNoPlace() throws InterruptedException {
        String id = done(NDJSON, Frames.line(1));
        int free = streams.free();
        for (int i = 0; i < free + 1; i++) {
            assertEquals(200, given().head(PATH + "/" + id + "/results").statusCode());
        }
        assertEquals(free, streams.free());
    }

    @Test
    void whatIsKeptIsKeptOutOfCaches() throws InterruptedException {
        String id = done(NDJSON, Frames.line(1));
        for (String path :
                List.of("", "/" + id, "/" + id + "/results", "/" + id + "/refusals", "/" + id + "/summary")) {
            assertEquals("no-store", given().get(PATH + path).header("Cache-Control"), path);
        }
        try (LiveRequest live = new LiveRequest("GET", PATH + "/" + id + "/events")) {
            assertEquals("no-store", live.header("Cache-Control"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void listsComeInPagesTheLatestFirst() throws InterruptedException {
        List<String> made = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            made.add(0, done(NDJSON, Frames.line(i)));
        }
        List<String> listed = new ArrayList<>();
        String after = "";
        while (listed.size() < 5) {
            JsonNode page = json(200, given().get(PATH + "?limit=2" + after), "BatchList");
            page.path("items").forEach(item -> listed.add(item.path("id").asText()));
            assertTrue(page.path("items").size() <= 2);
            if (!page.has("next")) {
                break;
            }
            after = "&after=" + page.path("next").asText();
        }
        assertEquals(made, listed.subList(0, 5));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "limit=0",
                "limit=101",
                "limit=x",
                "limit=",
                "limit=01",
                "limit=1&limit=2",
                "after=x",
                "after=",
                "units=si",
                "page=2"
            })
    void aStretchOfTheListThatIsNoneIsRefused(String query) {
        assertEquals(
                "/problems/bad-query",
                problem(400, given().get(PATH + "?" + query)).path("type").asText());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"00000000-0000-4000-8000-000000000000", "1", "nothing", "00000000-0000-4000-8000-00000000000G"})
    void whatIsNotThereIsNotFound(String id) {
        for (String part : List.of("", "/results", "/refusals", "/summary", "/events")) {
            assertEquals(
                    "/problems/not-found",
                    problem(404, given().get(PATH + "/" + id + part))
                            .path("type")
                            .asText());
        }
        problem(404, given().delete(PATH + "/" + id));
    }

    @Test
    void anEndedBatchIsRemovedWithAllThatBelongsToIt() throws InterruptedException {
        String id = done(NDJSON, Frames.line(1));
        assertEquals(204, given().delete(PATH + "/" + id).statusCode());
        problem(404, given().get(PATH + "/" + id));
        problem(404, given().get(PATH + "/" + id + "/results"));
        problem(404, given().delete(PATH + "/" + id));
    }

    @Test
    void aRunningBatchIsCancelledFirst() throws InterruptedException {
        String id = json(202, post(NDJSON, Frames.lines(20_000)), "BatchAnswer")
                .path("id")
                .asText();
        JsonNode cancelled = json(202, given().delete(PATH + "/" + id), "BatchAnswer");
        assertEquals("cancelled", cancelled.path("state").asText());
        List<String> lines =
                given().get(PATH + "/" + id + "/results").asString().lines().toList();
        JsonNode trailer = Document.read(lines.get(lines.size() - 1)).path("trailer");
        assertFalse(trailer.path("complete").asBoolean(true));
        assertEquals(lines.size() - 1, trailer.path("read").asInt());
        assertEquals(204, given().delete(PATH + "/" + id).statusCode());
        problem(404, given().get(PATH + "/" + id));
    }

    @Test
    void aKeySentAgainWithTheSameBodyIsAnsweredAlikeAndKeepsNothingMore() {
        String key = UUID.randomUUID().toString();
        Response first = keyed(key, Frames.lines(3));
        assertEquals(202, first.statusCode(), first.asString());
        int kept = kept();
        Response again = keyed(key, Frames.lines(3));
        assertEquals(202, again.statusCode(), again.asString());
        assertEquals(first.asString(), again.asString());
        assertEquals(first.header("Location"), again.header("Location"));
        assertEquals(kept, kept());
        JsonNode used = problem(422, keyed(key, Frames.lines(4)));
        assertEquals("/problems/key-used", used.path("type").asText());
        Response otherUnits = Frames.request(NDJSON)
                .header("Idempotency-Key", key)
                .body(Frames.lines(3).getBytes(StandardCharsets.UTF_8))
                .post(PATH + "?units=us");
        assertEquals("/problems/key-used", problem(422, otherUnits).path("type").asText());
        assertNotEquals(
                first.asString(),
                keyed(UUID.randomUUID().toString(), Frames.lines(3)).asString());
    }

    @Test
    void aKeyWhoseRequestIsUnderWayIsToldSo() throws Exception {
        // who comes second may be first at the key: then it is tried with another one
        for (int attempt = 0; attempt < 20; attempt++) {
            String key = UUID.randomUUID().toString();
            int free = streams.free();
            try (LiveRequest live =
                    new LiveRequest("POST", PATH, "Content-Type: " + NDJSON, "Idempotency-Key: " + key)) {
                live.send(Frames.line(1));
                Frames.await("the upload has begun", () -> streams.free() < free);
                Response meanwhile = keyed(key, Frames.line(1));
                if (meanwhile.statusCode() == 202) {
                    continue;
                }
                assertEquals(
                        "/problems/key-in-flight",
                        problem(409, meanwhile).path("type").asText());
                live.end();
                assertEquals(202, live.status());
                assertEquals(live.text(), keyed(key, Frames.line(1)).asString());
                return;
            }
        }
        throw new AssertionError("a key under way was taken twenty times");
    }

    @Test
    void aKeyWhoseRequestWasRefusedOrBrokeOffIsFreeAgain() throws Exception {
        String key = UUID.randomUUID().toString();
        problem(422, keyed(key, ""));
        try (LiveRequest live = new LiveRequest("POST", PATH, "Content-Type: " + NDJSON, "Idempotency-Key: " + key)) {
            live.send(Frames.line(1) + "{");
        }
        Frames.await("the key is free", () -> keyed(key, Frames.line(2)).statusCode() == 202);
    }

    @ParameterizedTest
    @ValueSource(strings = {" ", "a b", "ä", "\u0001"})
    void aKeyOfAnotherShapeIsRefused(String key) throws IOException {
        RawRequest.Answer answer = RawRequest.lines(
                "POST " + PATH + " HTTP/1.1",
                "Host: localhost",
                "Connection: close",
                "Content-Type: " + NDJSON,
                "Idempotency-Key: " + key,
                "Content-Length: 0");
        assertEquals(400, answer.status(), answer.body());
        assertEquals(null, answer.header("Location"));
    }

    @Test
    void aKeyThatIsTooLongOrStandsTwiceIsRefused() {
        assertEquals(
                "/problems/bad-header",
                problem(400, keyed("k".repeat(256), Frames.line(1)))
                        .path("type")
                        .asText());
        assertEquals(202, keyed("k".repeat(255), Frames.line(1)).statusCode());
        Response twice = Frames.request(NDJSON)
                .header("Idempotency-Key", "a", "b")
                .body(Frames.line(1).getBytes(StandardCharsets.UTF_8))
                .post(PATH);
        assertEquals("too-many", Frames.violation(problem(400, twice)));
    }

    @Test
    void aFileOfWhichNothingCanBeMadeIsRefusedAndNothingOfItIsKept() throws IOException {
        int kept = kept();
        problem(422, post(NDJSON, ""));
        problem(422, post("text/csv", Frames.CSV_HEADER));
        problem(422, post("text/csv", "frame,kind\tlength\r\n"));
        problem(422, post(NDJSON, new byte[] {'P', 'K', 3, 4, 0, 0}));
        problem(415, post("application/json", Frames.frame(1)));
        problem(415, post("text/csv;charset=latin1", Frames.rows(1)));
        problem(
                400,
                Frames.request(NDJSON)
                        .body(Frames.line(1).getBytes(StandardCharsets.UTF_8))
                        .post(PATH + "?limit=1"));
        RawRequest.Answer none = RawRequest.lines(
                "POST " + PATH + " HTTP/1.1", "Host: localhost", "Connection: close", "Content-Length: 0");
        assertEquals(415, none.status(), none.body());
        assertEquals(kept, kept());
    }

    @Test
    void anUploadThatBreaksOffLeavesNothingAndIsNoErrorOfOurs() throws Exception {
        int kept = kept();
        int free = streams.free();
        try (Logged logged = new Logged()) {
            for (int i = 0; i < 5; i++) {
                try (LiveRequest live = new LiveRequest("POST", PATH, "Content-Type: " + NDJSON)) {
                    live.send(Frames.lines(300) + "{\"frame\":");
                }
            }
            Frames.await("uploads are closed", () -> streams.free() == free);
            assertEquals(List.of(), logged.errors());
        }
        assertEquals(kept, kept());
    }

    @Test
    void aLineOf64MiBIsThatLinesFault() throws Exception {
        byte[] blanks = new byte[1 << 20];
        Arrays.fill(blanks, (byte) ' ');
        String id;
        try (LiveRequest live = new LiveRequest("POST", PATH, "Content-Type: " + NDJSON)) {
            live.send(Frames.line(1) + "{");
            for (int i = 0; i < 64; i++) {
                live.send(blanks);
            }
            live.send("\n" + Frames.line(3)).end();
            assertEquals(202, live.status());
            id = Document.read(live.text()).path("id").asText();
        }
        awaitState(id, "done");
        List<String> refusals =
                given().get(PATH + "/" + id + "/refusals").asString().lines().toList();
        assertEquals(2, refusals.size());
        assertEquals("too-long", Frames.violation(Document.read(refusals.get(0)).path("problem")));
    }

    @Test
    void aListenerHearsAtOnceAndUntilTheEnd() throws Exception {
        String id = json(202, post(NDJSON, Frames.lines(2_000)), "BatchAnswer")
                .path("id")
                .asText();
        List<JsonNode> heard = new ArrayList<>();
        String last = null;
        try (LiveRequest live = new LiveRequest("GET", PATH + "/" + id + "/events")) {
            assertEquals(200, live.status());
            assertEquals("text/event-stream", live.header("Content-Type").replaceAll(";.*", ""));
            for (String line : live.lines()) {
                if (line.startsWith("data:")) {
                    heard.add(Document.read(line.substring(5)));
                }
                if (line.startsWith("id:")) {
                    last = line.substring(3);
                }
            }
        }
        for (JsonNode event : heard) {
            assertEquals(Set.of(), Document.live().misfits(event, "BatchAnswer"));
            assertEquals(id, event.path("id").asText());
        }
        assertEquals("done", heard.get(heard.size() - 1).path("state").asText());
        assertEquals(Document.read(given().get(PATH + "/" + id).asString()), heard.get(heard.size() - 1));
        for (int i = 1; i < heard.size(); i++) {
            assertNotEquals(heard.get(i - 1), heard.get(i), "an event is news");
        }
        assertEquals("end", last);
        assertEquals(
                204,
                given().header("Last-Event-ID", last)
                        .get(PATH + "/" + id + "/events")
                        .statusCode());
        Frames.await("nobody looks any more", () -> events.watched() == 0);
    }

    @Test
    void manyListenersHoldNoThreadsAndAllHearTheEnd() throws Exception {
        String id = json(202, post(NDJSON, Frames.lines(5_000)), "BatchAnswer")
                .path("id")
                .asText();
        List<LiveRequest> listeners = new ArrayList<>();
        try {
            // more of them than the service has worker threads
            for (int i = 0; i < 400; i++) {
                listeners.add(new LiveRequest("GET", PATH + "/" + id + "/events"));
            }
            for (LiveRequest listener : listeners) {
                assertEquals(200, listener.status());
            }
            assertEquals(200, given().get("/v1/catalogue/fuels").statusCode());
            for (LiveRequest listener : listeners) {
                String last = listener.lines().stream()
                        .filter(line -> line.startsWith("data:"))
                        .reduce((a, b) -> b)
                        .orElseThrow();
                assertEquals(
                        "done", Document.read(last.substring(5)).path("state").asText());
            }
        } finally {
            for (LiveRequest listener : listeners) {
                listener.close();
            }
        }
        Frames.await("nobody looks any more", () -> events.watched() == 0);
    }

    @Test
    void aListenerWhoGoesAwayIsForgotten() throws Exception {
        String id = json(202, post(NDJSON, Frames.lines(20_000)), "BatchAnswer")
                .path("id")
                .asText();
        try (Logged logged = new Logged()) {
            try (LiveRequest live = new LiveRequest("GET", PATH + "/" + id + "/events")) {
                assertTrue(live.line() != null);
                Frames.await("it is looked at", () -> events.watched() == 1);
            }
            Frames.await("it is no longer looked at", () -> events.watched() == 0);
            // who comes after that hears it too
            try (LiveRequest live = new LiveRequest("GET", PATH + "/" + id + "/events")) {
                live.line();
                Frames.await("it is looked at again", () -> events.watched() == 1);
                given().delete(PATH + "/" + id);
                List<String> rest = live.lines();
                assertTrue(rest.stream().anyMatch(line -> line.contains("\"cancelled\"")), rest.toString());
            }
            assertEquals(List.of(), logged.errors());
        }
    }

    @Test
    void aFormOfTwoPartsBringsItsSettings() throws InterruptedException {
        Response response = given().multiPart(
                        "settings",
                        "settings.json",
                        "{\"steel\":{\"base\":\"1020\"}}".getBytes(StandardCharsets.UTF_8),
                        "application/json")
                .multiPart("jobs", "jobs.csv", Frames.rows(2).getBytes(StandardCharsets.UTF_8), "text/csv")
                .post(PATH);
        String id = json(202, response, "BatchAnswer").path("id").asText();
        awaitState(id, "done");
        String line = given().get(PATH + "/" + id + "/results")
                .asString()
                .lines()
                .findFirst()
                .orElseThrow();
        assertFalse(line.contains("steel.base"), "it is not assumed");
        assertNull(Document.read(line).get("problem"));
    }

    @Test
    void theDatabasesHealthIsAGroupOfItsOwn() {
        Response group = given().get("/q/health/group/kept");
        assertEquals(200, group.statusCode(), group.asString());
        assertEquals("UP", group.jsonPath().getString("status"));
        assertEquals("kept", group.jsonPath().getString("checks[0].name"));
        assertFalse(given().get("/q/health/ready").asString().contains("kept"));
    }
}
