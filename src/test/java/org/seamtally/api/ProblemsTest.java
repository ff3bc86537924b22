package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is not carried out answers with problem details (RFC 9457), and tells nothing of the program's inside. */
@QuarkusTest
class ProblemsTest {

    private static final String PLUG =
            "{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}}";

    private Document document;

    @BeforeEach
    void fetch() {
        document = Document.live();
    }

    // the client is not to add a charset to the media type by itself
    private static RequestSpecification plain() {
        return given().config(RestAssuredConfig.config()
                .encoderConfig(
                        EncoderConfig.encoderConfig().appendDefaultContentCharsetToContentTypeIfUndefined(false)));
    }

    private static Response post(String body) {
        return plain().contentType("application/json").body(body).post("/v1/deposits");
    }

    /** The problem in an answer, once it is certain that it is one. */
    private JsonNode problem(int status, Response response) {
        return problem(status, response.statusCode(), response.contentType(), response.asString());
    }

    private JsonNode problem(int expected, int status, String type, String body) {
        assertEquals(expected, status, body);
        assertEquals("application/problem+json", type);
        JsonNode problem = Document.read(body);
        assertEquals(Set.of(), document.misfits(problem, "ProblemReport"), body);
        assertEquals(expected, problem.path("status").asInt());
        for (String inside :
                List.of("Exception", "java.", "org.seamtally", "jackson", "io.quarkus", "\tat ", "Stack")) {
            assertFalse(body.contains(inside), inside + " in " + body);
        }
        return problem;
    }

    private static String violation(JsonNode problem) {
        assertEquals(1, problem.path("violations").size(), problem.toString());
        return problem.at("/violations/0/key").asText();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/v1", "/v1/nothing", "/v1/catalogue", "/v1/catalogue/nothing", "/q/nothing", "/index.html"})
    void anUnknownPathIsNotFound(String path) {
        assertEquals(
                "/problems/not-found",
                problem(404, given().get(path)).path("type").asText());
        problem(404, given().options(path));
    }

    @ParameterizedTest
    @CsvSource({
        "GET, /v1/deposits, 'OPTIONS, POST'",
        "PUT, /v1/frame-estimates, 'OPTIONS, POST'",
        "DELETE, /v1/gas-setup-comparisons, 'OPTIONS, POST'",
        "PATCH, /v1/preheats/, 'OPTIONS, POST'",
        "POST, /v1/catalogue/steels, 'GET, HEAD, OPTIONS'",
        "DELETE, /v1/catalogue/joint-kinds, 'GET, HEAD, OPTIONS'"
    })
    void aMethodThatAPathDoesNotHaveIsToldWhichItHas(String method, String path, String allowed) {
        Response response = given().request(method, path);
        assertEquals(
                "/problems/method-not-allowed",
                problem(405, response).path("type").asText());
        assertEquals(allowed, sorted(response.header("Allow")));
    }

    @ParameterizedTest
    @CsvSource({"/v1/deposits, 'OPTIONS, POST'", "/v1/catalogue/tubes, 'GET, HEAD, OPTIONS'"})
    void optionsTellsTheMethods(String path, String allowed) {
        Response response = given().options(path);
        assertEquals(200, response.statusCode());
        assertEquals(allowed, sorted(response.header("Allow")));
    }

    private static String sorted(String list) {
        return String.join(
                ", ", Arrays.stream(list.split(",")).map(String::strip).sorted().toList());
    }

    @Test
    void headAnswersAsGetWithoutABody() {
        Response head = given().head("/v1/catalogue/fuels");
        assertEquals(200, head.statusCode());
        assertEquals("application/json", head.contentType().replaceAll(";.*", ""));
        assertEquals("", head.asString());
        assertEquals(405, given().head("/v1/deposits").statusCode());
        assertEquals(404, given().head("/v1/nothing").statusCode());
    }

    @ParameterizedTest
    @ValueSource(strings = {"text/html", "application/xml", "image/png"})
    void anAnswerInAnotherMediaTypeIsNotToBeHad(String accept) {
        assertEquals(
                "/problems/not-acceptable",
                problem(406, given().accept(accept).get("/v1/catalogue/gases"))
                        .path("type")
                        .asText());
        problem(
                406,
                plain().accept(accept)
                        .contentType("application/json")
                        .body(PLUG)
                        .post("/v1/deposits"));
    }

    /** Where the framework picks the endpoint by the body's type, the answer's type is picked in the program. */
    @ParameterizedTest
    @ValueSource(strings = {"text/html", "multipart/form-data; boundary="})
    void anEstimateInAnotherMediaTypeOrInOneThatBreaksOffIsNotToBeHad(String accept) {
        for (String type : List.of("application/json", "application/x-ndjson")) {
            problem(
                    406,
                    Frames.request(type)
                            .header("Accept", accept)
                            .body("{\"frame\":{\"joints\":[]}}".getBytes(StandardCharsets.UTF_8))
                            .post("/v1/frame-estimates"));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"*/*", "application/*", "application/json;q=0.5, text/html", "application/json;charset=utf-8"})
    void anAcceptHeaderThatLeavesRoomForJsonIsServed(String accept) {
        assertEquals(200, given().accept(accept).get("/v1/catalogue/gases").statusCode());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "text/plain",
                "application/xml",
                "application/x-www-form-urlencoded",
                "multipart/form-data",
                "garbage",
                ";;;",
                "text/json"
            })
    void anotherMediaTypeIsNotTaken(String type) throws IOException {
        RawRequest.Answer answer = RawRequest.lines(
                "POST /v1/deposits HTTP/1.1",
                "Host: localhost",
                "Connection: close",
                "Content-Type: " + type,
                "Content-Length: " + PLUG.length(),
                "",
                PLUG);
        JsonNode problem = problem(415, answer.status(), answer.header("Content-Type"), answer.body());
        assertEquals("/problems/unsupported-media-type", problem.path("type").asText());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "application/json",
                "application/json;charset=utf-8",
                "application/json; charset=\"UTF-8\"",
                "APPLICATION/JSON"
            })
    void jsonIsTakenWithACharsetToo(String type) {
        Response response = plain().contentType(type).body(PLUG).post("/v1/deposits");
        assertEquals(200, response.statusCode(), response.asString());
        assertEquals("application/json", response.contentType().replaceAll(";.*", ""));
    }

    @ParameterizedTest
    @CsvSource({
        "units=uk, units",
        "units=, units",
        "units=SI, units",
        "units=si&units=us, units",
        "units=si&units=si, units",
        "unit=si, unit",
        "units=us&page=2, page",
        "UNITS=us, UNITS"
    })
    void anotherQueryIsRefused(String query, String path) {
        for (Response response : List.of(
                given().get("/v1/catalogue/tubes?" + query),
                given().get("/v1/catalogue/joint-kinds?" + query),
                plain().contentType("application/json").body(PLUG).post("/v1/deposits?" + query))) {
            JsonNode problem = problem(400, response);
            assertEquals("/problems/bad-query", problem.path("type").asText());
            assertEquals("unknown-word", violation(problem));
            assertEquals(path, problem.at("/violations/0/path").asText());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"units", "furlongs-and-chains-and-rods-and-links-and-hands-and-barleycorns-and-lines"})
    void aLongQueryIsQuotedShort(String name) {
        JsonNode problem = problem(400, given().get("/v1/catalogue/tubes?" + name + "=" + "x".repeat(300)));
        assertEquals("/problems/bad-query", problem.path("type").asText());
        assertEquals(67, problem.at("/violations/0/given").asText().length());
        assertTrue(problem.at("/violations/0/path").asText().length() <= 65, problem.toString());
    }

    @Test
    void anUpgradeThatIsNotCarriedThroughIsPassedOver() throws IOException {
        RawRequest.Answer answer = RawRequest.lines(
                "GET /v1/catalogue/fuels HTTP/1.1", "Host: localhost", "Upgrade: h2c", "Connection: close");
        assertEquals(200, answer.status());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/v1/%zz", "/v1/catalogue/tubes?units=%zz", "/v1/{x}", "/v1/a|b", "/v1/catalogue/tubes?units=\\"
            })
    void aTargetThatIsNoUriIsABadRequest(String target) throws IOException {
        RawRequest.Answer answer =
                RawRequest.lines("GET " + target + " HTTP/1.1", "Host: localhost", "Connection: close");
        assertEquals(400, answer.status());
        // the server refuses it before any code of ours is asked: with no body, and so telling nothing
        assertEquals("", answer.body());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{",
                "{\"joint\":",
                "{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": \"6 m",
                "[1, 2",
                "nothing",
                "{'joint': 1}",
                "{\"joint\": NaN}",
                "{\"joint\": {\"kind\": \"plug\", \"count\": 01}}",
                "{} {}",
                "\u0000"
            })
    void whatIsNoJsonIsABadRequestWithItsPlace(String body) {
        JsonNode problem = problem(400, post(body));
        assertEquals("/problems/not-json", problem.path("type").asText());
        assertEquals("not-json", violation(problem));
        assertTrue(problem.at("/violations/0/message").asText().contains("line 1, column "), problem.toString());
    }

    @Test
    void aFieldThatStandsTwiceIsABadRequest() {
        JsonNode problem =
                problem(400, post("{\"joint\": {\"kind\": \"plug\", \"depth\": \"2 mm\", \"depth\": \"3 mm\"}}"));
        assertEquals("duplicate", violation(problem));
    }

    @Test
    void anAbsentBodyIsABadRequest() {
        assertEquals(
                "not-json",
                violation(problem(400, plain().contentType("application/json").post("/v1/deposits"))));
        assertEquals("not-json", violation(problem(400, post("   \n"))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"[", "{\"joint\":"})
    void deepNestingIsABadRequest(String opening) {
        for (int levels : new int[] {60, 1000, 100_000}) {
            problem(400, post(opening.repeat(levels)));
        }
        assertEquals("too-deep", violation(problem(400, post("[".repeat(100_000)))));
    }

    @Test
    void textThatIsNotUtf8IsABadRequest() {
        byte[] latin = PLUG.replace("\"kind\"", "\"mark\": \"Strebe, schräg\", \"kind\"")
                .getBytes(StandardCharsets.ISO_8859_1);
        for (String type : List.of("application/json", "application/json;charset=iso-8859-1")) {
            Response response = given().config(RestAssuredConfig.config()
                            .encoderConfig(EncoderConfig.encoderConfig()
                                    .encodeContentTypeAs(type, io.restassured.http.ContentType.BINARY)))
                    .header("Content-Type", type)
                    .body(latin)
                    .post("/v1/deposits");
            assertEquals("not-json", violation(problem(400, response)));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"null", "[]", "5", "\"words\"", "true", "{}", "{\"joint\": null}", "{\"joint\": {}}"})
    void jsonOfAnotherShapeCannotBeWorkedWith(String body) {
        JsonNode problem = problem(422, post(body));
        assertEquals("/problems/invalid", problem.path("type").asText());
        assertTrue(problem.path("violations").size() >= 1, problem.toString());
    }

    @Test
    void everythingWrongIsToldAtOnceByPath() {
        JsonNode problem = problem(
                422,
                post(
                        "{\"joint\": {\"kind\": \"tube-to-tube\", \"branch\": {\"outsideDiameter\": 30, \"wall\": \"2 lb\"},"
                                + " \"main\": {\"outsideDiameter\": \"40 mm\", \"wall\": \"25 mm\"}, \"angle\": \"180 deg\","
                                + " \"colour\": \"red\"}, \"steel\": {\"base\": \"4310\"}}"));
        Set<String> paths = new HashSet<>();
        problem.path("violations")
                .forEach(violation -> paths.add(violation.path("path").asText()));
        assertEquals(
                Set.of(
                        "joint.branch.outsideDiameter",
                        "joint.branch.wall",
                        "joint.main.wall",
                        "joint.angle",
                        "joint.colour",
                        "steel.base"),
                paths);
    }

    @Test
    void markupSentBackIsDataInJson() {
        Response response = post("{\"joint\": {\"kind\": \"<script>alert(1)</script>\"}}");
        problem(422, response);
        assertEquals("application/problem+json", response.contentType());
    }

    @Test
    void aBodyOf50MiBIsTooLargeWhetherItsLengthIsDeclaredOrNot() throws IOException {
        int fifty = 50 << 20;
        RawRequest.Answer declared = RawRequest.lines(
                "POST /v1/frame-estimates HTTP/1.1",
                "Host: localhost",
                "Content-Type: application/json",
                "Content-Length: " + fifty);
        assertEquals(
                "/problems/too-large",
                problem(413, declared.status(), declared.header("Content-Type"), declared.body())
                        .path("type")
                        .asText());
        byte[] head = ("POST /v1/frame-estimates HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                        + "Transfer-Encoding: chunked\r\n\r\n" + Integer.toHexString(fifty) + "\r\n")
                .getBytes(StandardCharsets.US_ASCII);
        byte[] request = Arrays.copyOf(head, head.length + (17 << 20));
        Arrays.fill(request, head.length, request.length, (byte) ' ');
        RawRequest.Answer chunked = RawRequest.bytes(request);
        problem(413, chunked.status(), chunked.header("Content-Type"), chunked.body());
    }

    @Test
    void aBodyOfExactlyTheLargestSizeIsRead() throws IOException {
        assertEquals(200, padded(WholeBodies.LARGEST).status());
        assertEquals(413, padded(WholeBodies.LARGEST + 1).status());
    }

    private static RawRequest.Answer padded(long length) throws IOException {
        ByteArrayOutputStream request = new ByteArrayOutputStream((int) length + 1000);
        Charset ascii = StandardCharsets.US_ASCII;
        request.write(("POST /v1/deposits HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                        + "Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n"
                        + Long.toHexString(length) + "\r\n")
                .getBytes(ascii));
        request.write(PLUG.getBytes(ascii));
        byte[] padding = new byte[(int) length - PLUG.length()];
        Arrays.fill(padding, (byte) ' ');
        request.write(padding);
        request.write("\r\n0\r\n\r\n".getBytes(ascii));
        return RawRequest.bytes(request.toByteArray());
    }

    @Test
    void aFaultOfTheProgramTellsNothingOfItsInside() {
        jakarta.ws.rs.core.Response response =
                new Problems(null).any(new IllegalStateException("org.seamtally.Secret at line 5"));
        assertEquals(500, response.getStatus());
        org.seamtally.wire.ProblemReport report = (org.seamtally.wire.ProblemReport) response.getEntity();
        assertEquals("/problems/internal", report.type());
        assertEquals("Something is wrong with the program.", report.title());
        assertEquals(null, report.detail());
    }
}
