package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Quotes and price books over HTTP. */
@QuarkusTest
class QuotesTest {

    private static final String QUOTES = "/v1/quotes";
    private static final String BOOKS = "/v1/price-books";

    private Document document;

    @BeforeEach
    void tablesAreMade() throws InterruptedException {
        document = Document.live();
        Frames.await(
                "the tables are made", () -> given().get("/q/health/group/kept").statusCode() == 200);
    }

    // names in paths are encoded here, not by the client
    private static RequestSpecification plain() {
        return given().urlEncodingEnabled(false)
                .config(RestAssuredConfig.config()
                        .encoderConfig(EncoderConfig.encoderConfig()
                                .appendDefaultContentCharsetToContentTypeIfUndefined(false)))
                .contentType("application/json");
    }

    private static JsonNode example(String name) {
        return Document.live()
                .root()
                .at("/paths/~1v1~1quotes/post/requestBody/content/application~1json/examples/" + name + "/value");
    }

    private static ObjectNode quote() {
        return example("quote").deepCopy();
    }

    private static String version(String labour, String effective) {
        return "{\"effective\":\"" + effective + "\",\"prices\":{\"currency\":\"USD\",\"labour\":\"" + labour + "\"}}";
    }

    private JsonNode json(int status, Response response, String schema) {
        assertEquals(status, response.statusCode(), response.asString());
        assertEquals("application/json", response.contentType().replaceAll(";.*", ""));
        assertEquals("no-store", response.header("Cache-Control"));
        JsonNode answer = Document.read(response.asString());
        assertEquals(Set.of(), document.misfits(answer, schema));
        return answer;
    }

    private JsonNode problem(int status, String word, Response response) {
        assertEquals(status, response.statusCode(), response.asString());
        assertEquals("application/problem+json", response.contentType());
        JsonNode problem = Document.read(response.asString());
        assertEquals(Set.of(), document.misfits(problem, "ProblemReport"));
        assertEquals("/problems/" + word, problem.path("type").asText());
        return problem;
    }

    private String made(ObjectNode body) {
        Response response = plain().body(body.toString()).post(QUOTES);
        return json(201, response, "QuoteAnswer").path("id").asText();
    }

    @Test
    void aQuoteIsMadeReadRevisedAndCompared() {
        Response made = plain().body(quote().toString()).post(QUOTES);
        JsonNode first = json(201, made, "QuoteAnswer");
        String id = first.path("id").asText();
        assertEquals(QUOTES + "/" + id, made.header("Location"));
        assertEquals("\"1\"", made.header("ETag"));
        assertEquals(quote(), first.path("request"));

        Response read = plain().get(made.header("Location"));
        assertEquals(first, json(200, read, "QuoteAnswer"));
        assertEquals("\"1\"", read.header("ETag"));

        ObjectNode dearer = quote();
        ((ObjectNode) dearer.path("prices")).put("labour", "70.00/h");
        Response revised = plain().header("If-Match", read.header("ETag"))
                .body(dearer.toString())
                .post(QUOTES + "/" + id + "/revisions");
        JsonNode second = json(201, revised, "QuoteAnswer");
        assertEquals(QUOTES + "/" + id + "/revisions/2", revised.header("Location"));
        assertEquals("\"2\"", revised.header("ETag"));
        assertEquals(second, json(200, plain().get(QUOTES + "/" + id), "QuoteAnswer"));
        assertEquals(second, json(200, plain().get(revised.header("Location")), "QuoteAnswer"));
        JsonNode old = json(200, plain().get(QUOTES + "/" + id + "/revisions/1"), "QuoteAnswer");
        assertEquals(first.path("estimate"), old.path("estimate"));

        JsonNode difference = json(200, plain().get(QUOTES + "/" + id + "/difference?from=1&to=2"), "DifferenceAnswer");
        assertEquals("prices.labour", difference.at("/fields/0/path").asText());
        assertEquals(difference.path("change"), difference.at("/moved/prices"));
        problem(404, "not-found", plain().get(QUOTES + "/" + id + "/difference?from=1&to=3"));
        for (String query :
                List.of("", "?from=1", "?from=1&to=x", "?from=0&to=1", "?from=1&from=1&to=1", "?units=si")) {
            problem(400, "bad-query", plain().get(QUOTES + "/" + id + "/difference" + query));
        }
    }

    @Test
    void unitsAreThoseThatAreAskedFor() {
        Response made = plain().body(quote().toString()).post(QUOTES + "?units=us");
        JsonNode us = json(201, made, "QuoteAnswer");
        assertEquals("\"1-us\"", made.header("ETag"));
        assertEquals("in", us.at("/estimate/perFrame/seam/length/unit").asText());
        String id = us.path("id").asText();
        assertEquals(us, json(200, plain().get(QUOTES + "/" + id + "?units=us"), "QuoteAnswer"));
        JsonNode si = json(200, plain().get(QUOTES + "/" + id), "QuoteAnswer");
        assertEquals("mm", si.at("/estimate/perFrame/seam/length/unit").asText());
        assertEquals(si.at("/estimate/cost/total"), us.at("/estimate/cost/total"));
        json(
                201,
                plain().header("If-Match", "\"1-us\"").body(quote().toString()).post(QUOTES + "/" + id + "/revisions"),
                "QuoteAnswer");
        problem(400, "bad-query", plain().get(QUOTES + "/" + id + "?units=metric"));
    }

    @Test
    void aRevisionSaysWhatItWasMadeFrom() {
        String revisions = QUOTES + "/" + made(quote()) + "/revisions";
        String body = quote().toString();
        problem(428, "precondition-required", plain().body(body).post(revisions));
        for (String stale : List.of("\"2\"", "W/\"1\"", "\"x\"", "\"11\", \"3\"", "\"a\",".repeat(1900) + "\"a\"")) {
            problem(
                    412,
                    "precondition-failed",
                    plain().header("If-Match", stale).body(body).post(revisions));
        }
        for (String bad : List.of("1", "\"1", "", "*,\"1\"")) {
            problem(
                    400,
                    "bad-header",
                    plain().header("If-Match", bad).body(body).post(revisions));
        }
        json(201, plain().header("If-Match", "\"7\", \"1\"").body(body).post(revisions), "QuoteAnswer");
        problem(
                412,
                "precondition-failed",
                plain().header("If-Match", "\"1\"").body(body).post(revisions));
        json(201, plain().header("If-Match", "*").body(body).post(revisions), "QuoteAnswer");
        problem(422, "invalid", plain().header("If-Match", "*").body("{}").post(revisions));
        problem(400, "not-json", plain().header("If-Match", "*").body("{").post(revisions));
        problem(
                404,
                "not-found",
                plain().header("If-Match", "*").body(body).post(QUOTES + "/" + UUID.randomUUID() + "/revisions"));
    }

    @Test
    void aKeyCountsOnce() {
        String key = UUID.randomUUID().toString();
        String body = quote().toString();
        Response first = plain().header("Idempotency-Key", key).body(body).post(QUOTES);
        Response again = plain().header("Idempotency-Key", key).body(body).post(QUOTES);
        json(201, first, "QuoteAnswer");
        assertEquals(201, again.statusCode());
        assertEquals(first.asString(), again.asString());
        assertEquals(first.header("Location"), again.header("Location"));
        assertEquals(first.header("ETag"), again.header("ETag"));
        ObjectNode other = quote().put("notes", "another");
        problem(
                422,
                "key-used",
                plain().header("Idempotency-Key", key).body(other.toString()).post(QUOTES));
        problem(
                400,
                "bad-header",
                plain().header("Idempotency-Key", "a b").body(body).post(QUOTES));

        String revisions = first.header("Location") + "/revisions";
        Response revised = plain().header("Idempotency-Key", key)
                .header("If-Match", "\"1\"")
                .body(body)
                .post(revisions);
        Response revisedAgain = plain().header("Idempotency-Key", key)
                .header("If-Match", "\"1\"")
                .body(body)
                .post(revisions);
        assertEquals(2, json(201, revised, "QuoteAnswer").path("revision").asInt());
        assertEquals(revised.asString(), revisedAgain.asString());
        assertEquals(revised.header("Location"), revisedAgain.header("Location"));
        // what is refused gives its key back
        String refused = UUID.randomUUID().toString();
        problem(
                422,
                "invalid",
                plain().header("Idempotency-Key", refused).body("{}").post(QUOTES));
        json(201, plain().header("Idempotency-Key", refused).body(body).post(QUOTES), "QuoteAnswer");
    }

    @Test
    void quotesAreFoundAStretchAtATime() {
        String word = "w" + UUID.randomUUID().toString().replace("-", "");
        List<String> ids = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            ids.add(0, made(quote().put("notes", "Ä " + word + " 100%")));
        }
        JsonNode first = json(200, plain().get(QUOTES + "?limit=2&search=" + word), "QuoteList");
        JsonNode rest = json(
                200,
                plain().get(QUOTES + "?limit=2&search=" + word.toUpperCase(java.util.Locale.ROOT) + "&after="
                        + first.path("next").asText()),
                "QuoteList");
        List<String> found = new ArrayList<>();
        first.path("items").forEach(item -> found.add(item.path("id").asText()));
        rest.path("items").forEach(item -> found.add(item.path("id").asText()));
        assertEquals(ids, found);
        assertFalse(rest.has("next"));
        assertEquals(
                3,
                json(200, plain().get(QUOTES + "?search=%C3%A4%20" + word + "%20100%25"), "QuoteList")
                        .path("items")
                        .size());
        assertEquals(
                0,
                json(200, plain().get(QUOTES + "?search=" + word + "%25%25"), "QuoteList")
                        .path("items")
                        .size());
        assertTrue(json(200, plain().get(QUOTES), "QuoteList").path("items").size() >= 3);
        for (String query : List.of("limit=0", "limit=101", "limit=x", "after=x", "search=", "search=%00", "find=x")) {
            problem(400, "bad-query", plain().get(QUOTES + "?" + query));
        }
    }

    @Test
    void aPriceBookHasVersionsAndQuotesTakeTheOneOfTheirDay() {
        String name = "Shop " + UUID.randomUUID();
        String path = BOOKS + "/" + name.replace(" ", "%20");
        problem(404, "not-found", plain().get(path));
        Response made = plain().body(version("50.00/h", "2020-01-01")).put(path);
        JsonNode first = json(201, made, "PriceBookVersionAnswer");
        assertEquals(path + "/versions/1", made.header("Location"));
        assertEquals("\"1\"", made.header("ETag"));
        assertEquals(name, first.path("name").asText());
        assertEquals(first, json(200, plain().get(made.header("Location")), "PriceBookVersionAnswer"));

        problem(
                428,
                "precondition-required",
                plain().body(version("51.00/h", "2020-01-01")).put(path));
        problem(
                412,
                "precondition-failed",
                plain().header("If-None-Match", "*")
                        .body(version("51.00/h", "2020-01-01"))
                        .put(path));
        problem(
                412,
                "precondition-failed",
                plain().header("If-Match", "\"2\"")
                        .body(version("51.00/h", "2020-01-01"))
                        .put(path));
        problem(
                400,
                "bad-header",
                plain().header("If-None-Match", "\"1\"")
                        .body(version("51.00/h", "2020-01-01"))
                        .put(path));
        json(
                201,
                plain().header("If-Match", "\"1\"")
                        .body(version("60.00/h", "2099-01-01"))
                        .put(path),
                "PriceBookVersionAnswer");
        Response read = plain().get(path);
        JsonNode book = json(200, read, "PriceBookAnswer");
        assertEquals("\"2\"", read.header("ETag"));
        assertEquals(2, book.path("latest").asInt());
        assertEquals(1, book.at("/current/version").asInt());
        problem(404, "not-found", plain().get(path + "/versions/3"));
        problem(404, "not-found", plain().get(path + "/versions/0"));
        problem(422, "invalid", plain().header("If-Match", "\"2\"").body("{}").put(path));

        ObjectNode asked = quote();
        asked.remove("prices");
        asked.put("priceBook", name);
        JsonNode quote = json(200, plain().get(QUOTES + "/" + made(asked)), "QuoteAnswer");
        assertEquals(1, quote.at("/priceBook/version").asInt());
        assertEquals("50.00/h", quote.at("/estimate/cost/lines/0/rate").asText());
        assertEquals(200, plain().get(quote.at("/priceBook/href").asText()).statusCode());
        asked.put("priceBook", "No such book");
        assertEquals(
                "priceBook",
                problem(422, "invalid", plain().body(asked.toString()).post(QUOTES))
                        .at("/violations/0/path")
                        .asText());
    }

    @Test
    void priceBooksAreListedByName() {
        String prefix = "L" + UUID.randomUUID().toString().replace("-", "");
        for (String name : List.of("b", "a", "c")) {
            json(
                    201,
                    plain().header("If-None-Match", "*")
                            .body(version("50.00/h", "2020-01-01"))
                            .put(BOOKS + "/" + prefix + name),
                    "PriceBookVersionAnswer");
        }
        JsonNode page = json(200, plain().get(BOOKS + "?limit=2&after=" + prefix), "PriceBookList");
        assertEquals(prefix + "a", page.at("/items/0/name").asText());
        assertEquals(prefix + "b", page.path("next").asText());
        page = json(
                200, plain().get(BOOKS + "?limit=2&after=" + page.path("next").asText()), "PriceBookList");
        assertEquals(prefix + "c", page.at("/items/0/name").asText());
        problem(400, "bad-query", plain().get(BOOKS + "?after=%20"));
        problem(400, "bad-query", plain().get(BOOKS + "?search=a"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"%20a", "a%20", "a%2Bb", "-", "..a", "a%0Ab", "%F0%9F%94%A5"})
    void aNameThatIsNoneMakesNoBook(String name) {
        assertEquals(
                "name",
                problem(
                                422,
                                "invalid",
                                plain().body(version("50.00/h", "2020-01-01")).put(BOOKS + "/" + name))
                        .at("/violations/0/path")
                        .asText());
        problem(404, "not-found", plain().get(BOOKS + "/" + name));
    }

    @ParameterizedTest
    @ValueSource(strings = {"x", "00000000-0000-0000-0000-000000000000", "00000000-0000-0000-0000-00000000000A"})
    void whatIsNotThereIsNotFound(String id) {
        problem(404, "not-found", plain().get(QUOTES + "/" + id));
        problem(404, "not-found", plain().get(QUOTES + "/" + id + "/revisions/1"));
        problem(404, "not-found", plain().get(QUOTES + "/" + id + "/difference?from=1&to=1"));
    }

    @Test
    void otherMethodsAndMediaTypesAreRefused() {
        String id = made(quote());
        Response deleted = plain().delete(QUOTES + "/" + id);
        problem(405, "method-not-allowed", deleted);
        assertEquals("GET, HEAD, OPTIONS", deleted.header("Allow").replaceAll("\\s*,\\s*", ", "));
        assertEquals(405, plain().body("{}").post(BOOKS + "/a").statusCode());
        problem(
                415,
                "unsupported-media-type",
                given().contentType("text/plain").body("{}").post(QUOTES));
        problem(406, "not-acceptable", plain().accept("text/html").get(QUOTES + "/" + id));
    }

    @Test
    void theExamplesFitTheDocumentAndRun() {
        for (Document.Operation operation : document.operations()) {
            if (!operation.body().isMissingNode()
                    && (operation.path().startsWith(QUOTES) || operation.path().startsWith(BOOKS))) {
                operation.body().path("examples").forEach(example -> {
                    JsonNode body = example.path("value");
                    assertEquals(
                            Set.of(), document.misfits(body, operation.body().path("schema")), operation.path());
                    String path = operation
                            .path()
                            .replace("{id}", operation.path().contains("{id}") ? made(quote()) : "")
                            .replace("{name}", UUID.randomUUID().toString());
                    RequestSpecification request = plain().body(body.toString());
                    Response answer = operation.method().equals("put")
                            ? request.put(path)
                            : path.endsWith("/revisions")
                                    ? request.header("If-Match", "*").post(path)
                                    : request.post(path);
                    assertEquals(201, answer.statusCode(), answer.asString());
                });
            }
        }
        assertNotEquals(Set.of(), document.misfits(Document.read("{\"frame\": {}}"), "QuoteRequest"));
    }
}
