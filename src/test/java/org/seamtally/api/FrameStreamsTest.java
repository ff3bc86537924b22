package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Job files straight through: results while the file is read, faults where they belong, nobody held up. */
@QuarkusTest
class FrameStreamsTest {

    private static final String PATH = "/v1/frame-estimates";
    private static final String NDJSON = "Content-Type: application/x-ndjson";
    private static final String CSV = "Content-Type: text/csv";

    @Inject
    OpenStreams streams;

    private static Response post(String type, String accept, byte[] body, String query) {
        return Frames.request(type).accept(accept).body(body).post(PATH + query);
    }

    private static Response post(String type, String body) {
        return post(type, "*/*", body.getBytes(StandardCharsets.UTF_8), "");
    }

    private static JsonNode problem(int status, Response response) {
        assertEquals(status, response.statusCode(), response.asString());
        assertEquals("application/problem+json", response.contentType());
        JsonNode problem = Document.read(response.asString());
        assertEquals(Set.of(), Document.live().misfits(problem, "ProblemReport"));
        return problem;
    }

    private static String trailer(int done, int refused) {
        return "{\"trailer\":{\"read\":" + (done + refused) + ",\"done\":" + done + ",\"refused\":" + refused
                + ",\"complete\":true}}";
    }

    @Test
    void eachLineComesBackAsItsEstimateInOrderAndThenTheTrailer() {
        Response response = post("application/x-ndjson", Frames.lines(3) + Frames.BAD_LINE + Frames.line(5));
        assertEquals(200, response.statusCode(), response.asString());
        assertEquals("application/x-ndjson", response.contentType());
        List<String> lines = response.asString().lines().toList();
        assertEquals(6, lines.size());
        for (int i : new int[] {1, 2, 3, 5}) {
            JsonNode line = Document.read(lines.get(i - 1));
            assertEquals(i, line.path("line").asInt());
            String alone = given().contentType("application/json")
                    .body(Frames.frame(i))
                    .post(PATH)
                    .asString();
            assertEquals(Document.read(alone), line.path("estimate"));
        }
        JsonNode refused = Document.read(lines.get(3));
        assertEquals("empty", Frames.violation(refused.path("problem")));
        assertEquals(trailer(4, 1), lines.get(5));
    }

    @Test
    void resultsAreInTheUnitsAskedFor() {
        byte[] one = Frames.line(1).getBytes(StandardCharsets.UTF_8);
        String us = post("application/x-ndjson", "*/*", one, "?units=us").asString();
        assertEquals(
                "in",
                Document.read(us.lines().findFirst().orElseThrow())
                        .at("/estimate/perFrame/seam/length/unit")
                        .asText());
        assertEquals(
                "/problems/bad-query",
                problem(400, post("application/x-ndjson", "*/*", one, "?units=uk"))
                        .path("type")
                        .asText());
        problem(400, post("application/x-ndjson", "*/*", one, "?limit=3"));
    }

    @ParameterizedTest
    @CsvSource({
        "*/*, application/x-ndjson",
        "application/*, application/x-ndjson",
        "application/x-ndjson, application/x-ndjson",
        "text/csv, text/csv;charset=UTF-8",
        "text/*, text/csv;charset=UTF-8",
        "'text/csv, application/x-ndjson;q=0.5', text/csv;charset=UTF-8",
        "'application/x-ndjson, text/csv', application/x-ndjson",
        "'text/html, text/csv;q=0.1', text/csv;charset=UTF-8"
    })
    void acceptPicksTheFormOfTheResults(String accept, String type) {
        for (String sent : List.of("application/x-ndjson", "text/csv")) {
            String body = sent.equals("text/csv") ? Frames.rows(2) : Frames.lines(2);
            Response response = post(sent, accept, body.getBytes(StandardCharsets.UTF_8), "");
            assertEquals(200, response.statusCode(), response.asString());
            assertEquals(type, response.contentType());
            List<String> lines = response.asString().lines().toList();
            if (type.startsWith("text/csv")) {
                assertTrue(lines.get(0).startsWith("record,line"), lines.get(0));
                assertEquals(4, lines.size());
                assertTrue(lines.get(3).startsWith("trailer,"), lines.get(3));
            } else {
                assertEquals(3, lines.size());
                assertEquals(trailer(2, 0), lines.get(2));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"application/json", "text/html", "application/problem+json"})
    void resultsInAnotherFormAreNotToBeHad(String accept) {
        problem(406, post("application/x-ndjson", accept, Frames.lines(1).getBytes(StandardCharsets.UTF_8), ""));
    }

    @Test
    void aSingleEstimateIsNotToBeHadAsLines() {
        problem(406, post("application/json", "text/csv", Frames.frame(1).getBytes(StandardCharsets.UTF_8), ""));
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/html", "text/csv; header="})
    void anotherAcceptIsNotAnswered(String accept) {
        problem(406, post("text/csv", accept, "frame,kind\n".getBytes(StandardCharsets.UTF_8), ""));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "application/ndjson",
                "application/x-ndjson;charset=iso-8859-1",
                "text/csv; charset=windows-1252",
                "text/csv;charset=UTF-16",
                "text/plain",
                "application/vnd.ms-excel",
                ";;;",
                "/"
            })
    void anotherTypeOrCharsetIsNotTaken(String type) {
        assertEquals(
                "/problems/unsupported-media-type",
                problem(415, post(type, Frames.lines(1))).path("type").asText());
    }

    @ParameterizedTest
    @ValueSource(strings = {"application/x-ndjson;charset=utf-8", "application/x-ndjson; charset=\"UTF-8\""})
    void utf8MayBeNamed(String type) {
        assertEquals(200, post(type, Frames.lines(1)).statusCode());
    }

    @Test
    void aFramesResultIsThereBeforeTheNextFrameIsSent() throws IOException {
        try (LiveRequest live = new LiveRequest("POST", PATH, NDJSON)) {
            for (int i = 1; i <= 5; i++) {
                live.send(Frames.line(i));
                assertEquals(i, Document.read(live.line()).path("line").asInt());
            }
            assertEquals(200, live.status());
            live.end();
            assertEquals(List.of(trailer(5, 0)), live.lines());
        }
    }

    @Test
    void aTablesFrameIsAnsweredOnceTheNextOneBegins() throws IOException {
        try (LiveRequest live = new LiveRequest("POST", PATH, CSV)) {
            live.send(Frames.CSV_HEADER + Frames.row(1));
            for (int i = 2; i <= 4; i++) {
                live.send(Frames.row(i));
                assertEquals(i, Document.read(live.line()).path("line").asInt());
            }
            live.end();
            assertEquals(2, live.lines().size());
        }
    }

    @Test
    void aBodyOfDeclaredLengthIsAnsweredWhileItIsSentToo() throws IOException {
        String line = Frames.line(7);
        try (java.net.Socket socket = new java.net.Socket("localhost", io.restassured.RestAssured.port)) {
            socket.setSoTimeout(60_000);
            socket.getOutputStream()
                    .write(("POST " + PATH + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + NDJSON
                                    + "\r\nContent-Length: " + 2 * line.length() + "\r\n\r\n" + line)
                            .getBytes(StandardCharsets.US_ASCII));
            StringBuilder got = new StringBuilder();
            while (!got.toString().contains("\"line\":1,")) {
                int b = socket.getInputStream().read();
                assertTrue(b >= 0, got.toString());
                got.append((char) b);
            }
            socket.getOutputStream().write(line.getBytes(StandardCharsets.US_ASCII));
            String rest = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(rest.contains(trailer(2, 0)), rest);
        }
    }

    @Test
    void aFileThatIsNoJobFileIsRefusedWholeBeforeAnythingIsAnswered() {
        for (String body : List.of("", "\n\r\n  \n")) {
            assertEquals("empty", Frames.violation(problem(422, post("application/x-ndjson", body))));
        }
        assertEquals("empty", Frames.violation(problem(422, post("text/csv", ""))));
        problem(422, post("text/csv", Frames.CSV_HEADER));
        problem(422, post("text/csv", "frame,kind,plate thicknes [mm],length [mm]\r\n" + Frames.row(1)));
        byte[] workbook = {'P', 'K', 3, 4, 0, 0, 0, 0};
        problem(422, post("text/csv", "*/*", workbook, ""));
        problem(422, post("application/x-ndjson", "*/*", new byte[] {0x1f, (byte) 0x8b, 8, 0}, ""));
        problem(422, post("application/x-ndjson", "*/*", new byte[100], ""));
        problem(422, post("application/x-ndjson", "*/*", Frames.lines(2).getBytes(StandardCharsets.UTF_16), ""));
    }

    @Test
    void halfALineIsThatLinesFault() {
        String whole = Frames.lines(2);
        List<String> lines = post("application/x-ndjson", whole.substring(0, whole.length() - 20))
                .asString()
                .lines()
                .toList();
        assertEquals(3, lines.size());
        assertEquals("not-json", Frames.violation(Document.read(lines.get(1)).path("problem")));
        assertEquals(trailer(1, 1), lines.get(2));
    }

    @Test
    void aLineThatIsNotUtf8IsThatLinesFault() {
        byte[] body = (Frames.line(1) + Frames.line(2).replace("tab", "Strebe schräg") + Frames.line(3))
                .getBytes(StandardCharsets.ISO_8859_1);
        List<String> lines =
                post("application/x-ndjson", "*/*", body, "").asString().lines().toList();
        assertEquals(trailer(2, 1), lines.get(3));
        assertTrue(Document.read(lines.get(1)).has("problem"), lines.get(1));
    }

    @Test
    void aLineOf64MiBIsThatLinesFaultAndTheNextOneIsAnswered() throws IOException {
        byte[] blanks = new byte[1 << 20];
        Arrays.fill(blanks, (byte) ' ');
        try (LiveRequest live = new LiveRequest("POST", PATH, NDJSON)) {
            live.send(Frames.line(1));
            live.send("{\"frame\":");
            for (int i = 0; i < 64; i++) {
                live.send(blanks);
            }
            live.send("1}\n").send(Frames.line(3)).end();
            List<String> lines = live.lines();
            assertEquals(4, lines.size());
            JsonNode refused = Document.read(lines.get(1));
            assertEquals(2, refused.path("line").asInt());
            assertEquals("too-long", Frames.violation(refused.path("problem")));
            assertEquals(3, Document.read(lines.get(2)).path("line").asInt());
            assertEquals(trailer(2, 1), lines.get(3));
        }
    }

    @Test
    void aBodyFarLargerThanASingleRequestMayBeIsTakenWhenItsLengthIsDeclared() throws IOException {
        String blank = " ".repeat(1 << 20) + "\n";
        long length = 20L * blank.length() + Frames.line(1).length();
        assertTrue(length > WholeBodies.LARGEST);
        try (java.net.Socket socket = new java.net.Socket("localhost", io.restassured.RestAssured.port)) {
            socket.setSoTimeout(60_000);
            socket.getOutputStream()
                    .write(("POST " + PATH + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n" + NDJSON
                                    + "\r\nContent-Length: " + length + "\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            for (int i = 0; i < 20; i++) {
                socket.getOutputStream().write(blank.getBytes(StandardCharsets.US_ASCII));
            }
            socket.getOutputStream().write(Frames.line(1).getBytes(StandardCharsets.US_ASCII));
            RawRequest.Answer answer = RawRequest.read(socket.getInputStream());
            assertEquals(200, answer.status(), answer.body());
            assertTrue(answer.body().contains("\"trailer\""), answer.body());
        }
    }

    @Test
    void aRefusedBodyIsNotReadToItsEndAndItsConnectionIsClosed() throws IOException {
        try (LiveRequest live = new LiveRequest("POST", PATH, "Content-Type: text/plain")) {
            live.send("anything");
            assertEquals(415, live.status());
            assertEquals("close", live.header("Connection"));
            live.text();
            assertNull(live.line(), "the connection is closed, though the body was never ended");
        }
        try (LiveRequest live = new LiveRequest("POST", PATH, CSV)) {
            live.send("nonsense\r\n1\r\n");
            assertEquals(422, live.status());
            live.text();
            assertNull(live.line());
        }
    }

    @Test
    void aSenderWhoGoesAwayFreesHisThreadAndIsNoErrorOfOurs() throws Exception {
        int free = streams.free();
        try (Logged logged = new Logged()) {
            for (int i = 0; i < 10; i++) {
                try (LiveRequest live = new LiveRequest("POST", PATH, NDJSON)) {
                    live.send(Frames.line(1));
                    assertEquals(1, Document.read(live.line()).path("line").asInt());
                    // in the middle of a line
                    live.send("{\"frame\":{");
                }
            }
            Frames.await("streams are closed", () -> streams.free() == free);
            assertEquals(List.of(), logged.errors());
        }
    }

    @Test
    void aReaderWhoGoesAwayFreesHisThreadAndIsNoErrorOfOurs() throws Exception {
        int free = streams.free();
        byte[] many = Frames.lines(500).getBytes(StandardCharsets.UTF_8);
        try (Logged logged = new Logged()) {
            for (int i = 0; i < 5; i++) {
                try (LiveRequest live = new LiveRequest("POST", PATH, NDJSON)) {
                    live.send(many);
                    assertEquals(200, live.status());
                }
            }
            Frames.await("streams are closed", () -> streams.free() == free);
            assertEquals(List.of(), logged.errors());
        }
    }

    @Test
    void framesAreCounted() {
        double done = metric("done");
        double refused = metric("refused");
        String answer =
                post("application/x-ndjson", Frames.lines(3) + Frames.BAD_LINE).asString();
        assertEquals(trailer(3, 1), answer.lines().toList().get(4));
        assertEquals(done + 3, metric("done"));
        assertEquals(refused + 1, metric("refused"));
    }

    private static double metric(String outcome) {
        return given().accept("text/plain")
                .get("/q/metrics")
                .asString()
                .lines()
                .filter(line -> line.startsWith("seamtally_batch_frames_total{")
                        && line.contains("from=\"stream\"")
                        && line.contains("outcome=\"" + outcome + "\""))
                .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void linesAndTheExamplesOfTheDocumentAreAsItSays() {
        Document document = Document.live();
        JsonNode paths = document.root().at("/paths/~1v1~1frame-estimates/post");
        JsonNode line = paths.at("/responses/200/content/application~1x-ndjson/schema");
        for (String type : List.of("application/x-ndjson", "text/csv")) {
            StringBuilder example = new StringBuilder();
            paths.path("requestBody")
                    .path("content")
                    .path(type)
                    .path("examples")
                    .forEach(each -> {
                        JsonNode value = each.path("value");
                        example.append(value.isTextual() ? value.asText() : value + "\n");
                    });
            List<String> lines =
                    post(type, example.toString()).asString().lines().toList();
            assertEquals(trailer(2, 0), lines.get(2));
            for (String result : lines) {
                assertEquals(Set.of(), document.misfits(Document.read(result), line), result);
            }
        }
        String refused = post("application/x-ndjson", Frames.BAD_LINE).asString();
        assertEquals(
                Set.of(),
                document.misfits(Document.read(refused.lines().findFirst().orElseThrow()), line));
    }
}
