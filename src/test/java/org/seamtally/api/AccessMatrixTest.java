package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every operation of the committed OpenAPI document, asked by everybody: without a token, with ones that are not taken, with
 * each role, and from another shop. An operation that the table does not have fails.
 */
@QuarkusTest
@TestProfile(Keyed.class)
class AccessMatrixTest {

    private static final String OWN = "Northside Tube";
    private static final String OTHER = "Harbour Frames";

    private static final Set<String> ROLES = Set.of("estimator", "price-keeper", "reader", "machine", "operator");

    private static final Set<String> WORKS_OUT = Set.of("estimator", "price-keeper", "machine");
    private static final Set<String> LOOKS_UP = Set.of("estimator", "price-keeper", "reader", "machine");
    private static final Set<String> READS = Set.of("estimator", "price-keeper", "reader");
    private static final Set<String> SENDS_FILES = Set.of("estimator", "machine");
    private static final Set<String> ESTIMATES = Set.of("estimator");
    private static final Set<String> KEEPS_PRICES = Set.of("price-keeper");
    private static final Set<String> OPERATES = Set.of("operator");

    /**
     * What is due.
     *
     * @param roles those that may
     * @param in what they are answered
     * @param other what they are answered from another shop
     */
    private record Due(Set<String> roles, int in, int other) {}

    private static final Map<String, Due> TABLE = Map.ofEntries(
            Map.entry("post /v1/frame-estimates", new Due(WORKS_OUT, 200, 200)),
            Map.entry("post /v1/frame-totals", new Due(WORKS_OUT, 200, 200)),
            Map.entry("post /v1/deposits", new Due(WORKS_OUT, 200, 200)),
            Map.entry("post /v1/arc-times", new Due(WORKS_OUT, 200, 200)),
            Map.entry("post /v1/gas-losses", new Due(WORKS_OUT, 200, 200)),
            Map.entry("post /v1/gas-setup-comparisons", new Due(WORKS_OUT, 200, 200)),
            Map.entry("post /v1/preheats", new Due(WORKS_OUT, 200, 200)),
            Map.entry("post /v1/steel-reviews", new Due(WORKS_OUT, 200, 200)),
            Map.entry("get /v1/catalogue/steels", new Due(LOOKS_UP, 200, 200)),
            Map.entry("get /v1/catalogue/fillers", new Due(LOOKS_UP, 200, 200)),
            Map.entry("get /v1/catalogue/gases", new Due(LOOKS_UP, 200, 200)),
            Map.entry("get /v1/catalogue/fuels", new Due(LOOKS_UP, 200, 200)),
            Map.entry("get /v1/catalogue/tubes", new Due(LOOKS_UP, 200, 200)),
            Map.entry("get /v1/catalogue/joint-kinds", new Due(LOOKS_UP, 200, 200)),
            Map.entry("post /v1/batches", new Due(SENDS_FILES, 202, 202)),
            Map.entry("get /v1/batches", new Due(LOOKS_UP, 200, 200)),
            Map.entry("get /v1/batches/{id}", new Due(LOOKS_UP, 200, 404)),
            Map.entry("get /v1/batches/{id}/events", new Due(LOOKS_UP, 200, 404)),
            Map.entry("get /v1/batches/{id}/results", new Due(LOOKS_UP, 200, 404)),
            Map.entry("get /v1/batches/{id}/refusals", new Due(LOOKS_UP, 200, 404)),
            Map.entry("get /v1/batches/{id}/summary", new Due(LOOKS_UP, 200, 404)),
            Map.entry("delete /v1/batches/{id}", new Due(SENDS_FILES, 204, 404)),
            Map.entry("post /v1/quotes", new Due(ESTIMATES, 201, 201)),
            Map.entry("get /v1/quotes", new Due(READS, 200, 200)),
            Map.entry("get /v1/quotes/{id}", new Due(READS, 200, 404)),
            Map.entry("post /v1/quotes/{id}/revisions", new Due(ESTIMATES, 201, 404)),
            Map.entry("get /v1/quotes/{id}/revisions/{n}", new Due(READS, 200, 404)),
            Map.entry("get /v1/quotes/{id}/difference", new Due(READS, 200, 404)),
            Map.entry("get /v1/quotes/{id}/print", new Due(READS, 200, 404)),
            Map.entry("get /v1/backup", new Due(OPERATES, 200, 200)),
            Map.entry("get /v1/price-books", new Due(READS, 200, 200)),
            // there is no book of this name whose state If-Match could name
            Map.entry("put /v1/price-books/{name}", new Due(KEEPS_PRICES, 201, 412)),
            Map.entry("get /v1/price-books/{name}", new Due(READS, 200, 404)),
            Map.entry("get /v1/price-books/{name}/versions/{n}", new Due(READS, 200, 404)));

    private static final JsonNode DOCUMENT = committed();

    private static JsonNode committed() {
        try {
            return new YAMLMapper().readTree(Files.readString(Path.of("openapi", "openapi.yaml")));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Method and path of each operation. */
    static Stream<String> operations() {
        List<String> all = new ArrayList<>();
        DOCUMENT.path("paths")
                .properties()
                .forEach(path ->
                        path.getValue().fieldNames().forEachRemaining(method -> all.add(method + " " + path.getKey())));
        return all.stream();
    }

    private static Tokens token(String... roles) {
        return Tokens.of(OWN, roles);
    }

    /** Tokens that are not taken, though whoever bears them claims every role. */
    private static Map<String, String> notTaken() {
        String[] all = ROLES.toArray(String[]::new);
        long now = Instant.now().getEpochSecond();
        Map<String, String> tokens = new LinkedHashMap<>();
        tokens.put("no token", null);
        tokens.put("no JWT", "letmein");
        tokens.put("expired", token(all).with("exp", now - 3_600).signed());
        tokens.put("without an end", token(all).with("exp", null).signed());
        tokens.put(
                "of another issuer",
                token(all).with("iss", "https://other.example").signed());
        tokens.put("of no issuer", token(all).with("iss", null).signed());
        tokens.put("for another audience", token(all).with("aud", "another").signed());
        tokens.put("for no audience", token(all).with("aud", null).signed());
        tokens.put("signed by another key", token(all).forged());
        tokens.put("not signed", token(all).unsigned());
        tokens.put("signed by the public key", token(all).confused());
        return tokens;
    }

    /** One shop's things, made for the operations to be asked about. */
    private record Kept(String quote, String batch, String book) {}

    private static Kept kept;

    @BeforeEach
    void somethingIsKept() throws InterruptedException {
        Frames.await(
                "the tables are made",
                () -> as(token("operator").signed()).get("/q/health/group/kept").statusCode() == 200);
        if (kept == null) {
            String estimator = token("estimator").signed();
            String book = "northside";
            assertEquals(
                    201,
                    json(as(token("price-keeper").signed()), "/v1/price-books/{name}")
                            .put("/v1/price-books/" + book)
                            .statusCode());
            Response quote = json(as(estimator), "/v1/quotes").post("/v1/quotes");
            assertEquals(201, quote.statusCode(), quote.asString());
            kept = new Kept(quote.path("id"), doneBatch(), book);
        }
    }

    private static String doneBatch() throws InterruptedException {
        String estimator = token("estimator").signed();
        String id = jobFile(as(estimator)).post("/v1/batches").path("id");
        Frames.await(
                "the batch is done",
                () -> as(estimator).get("/v1/batches/" + id).path("state").equals("done"));
        return id;
    }

    private static RequestSpecification as(String token) {
        RequestSpecification request = Frames.request("application/json");
        return token == null ? request : request.header("Authorization", "Bearer " + token);
    }

    /** With the document's own example for a path as its body. */
    private static RequestSpecification json(RequestSpecification request, String path) {
        JsonNode operation = DOCUMENT.path("paths").path(path);
        JsonNode body =
                operation.path(operation.has("put") ? "put" : "post").at("/requestBody/content/application~1json");
        JsonNode example = body.path("examples").elements().next().path("value");
        return request.contentType("application/json").body(example.toString().getBytes());
    }

    private static RequestSpecification jobFile(RequestSpecification request) {
        return request.contentType("application/x-ndjson").body(Frames.line(1).getBytes());
    }

    /** Sends an operation's request, which does what it is there for if it is let in. */
    private static Response ask(String operation, String token) throws InterruptedException {
        String method = operation.split(" ")[0];
        String path = operation.split(" ")[1];
        RequestSpecification request = as(token);
        if (path.equals("/v1/batches") && method.equals("post")) {
            jobFile(request);
        } else if (method.equals("post") || method.equals("put")) {
            json(request, path);
        }
        if (path.endsWith("/revisions") || method.equals("put")) {
            request.header("If-Match", "*");
        }
        if (path.endsWith("/difference")) {
            request.queryParam("from", 1).queryParam("to", 1);
        }
        String batch = method.equals("delete") ? doneBatch() : kept.batch;
        String place = path.replace("{id}", path.startsWith("/v1/batches") ? batch : kept.quote)
                .replace("{name}", kept.book)
                .replace("{n}", "1");
        return request.request(method.toUpperCase(java.util.Locale.ROOT), place);
    }

    private static void assertProblem(int status, String word, Response answer, String asked) {
        assertEquals(status, answer.statusCode(), asked + ": " + answer.asString());
        assertEquals("application/problem+json", answer.contentType(), asked);
        assertEquals("/problems/" + word, answer.path("type"), asked);
        if (status == 401) {
            assertTrue(answer.header("WWW-Authenticate").startsWith("Bearer"), asked);
        }
    }

    @Test
    void theTableHasEveryOperationAndNoOther() {
        assertEquals(new TreeSet<>(TABLE.keySet()), new TreeSet<>(operations().toList()));
    }

    @ParameterizedTest
    @MethodSource("operations")
    void nobodyComesInWithoutATokenThatIsTaken(String operation) {
        assertNotNull(TABLE.get(operation), operation + " is new: the table says who may use it");
        assertAll(notTaken().entrySet().stream().<Executable>map(token -> () -> {
            Response answer = ask(operation, token.getValue());
            assertProblem(401, "unauthorized", answer, operation + " " + token.getKey());
            assertEquals(
                    token.getValue() == null ? "Bearer" : "Bearer error=\"invalid_token\"",
                    answer.header("WWW-Authenticate"),
                    token.getKey());
        }));
    }

    @ParameterizedTest
    @MethodSource("operations")
    void aRoleDoesWhatItMayInItsOwnShop(String operation) {
        Due due = TABLE.get(operation);
        assertNotNull(due, operation + " is new: the table says who may use it");
        assertAll(ROLES.stream().<Executable>map(role -> () -> {
            Response answer = ask(operation, token(role).signed());
            if (due.roles.contains(role)) {
                assertEquals(due.in, answer.statusCode(), operation + " " + role + ": " + answer.asString());
            } else {
                assertProblem(403, "not-allowed", answer, operation + " " + role);
            }
        }));
    }

    @ParameterizedTest
    @MethodSource("operations")
    void anotherShopSeesNothingOfThis(String operation) {
        Due due = TABLE.get(operation);
        assertNotNull(due, operation + " is new: the table says who may use it");
        assertAll(ROLES.stream().<Executable>map(role -> () -> {
            Response answer = ask(operation, Tokens.of(OTHER, role).signed());
            if (!due.roles.contains(role)) {
                assertProblem(403, "not-allowed", answer, operation + " " + role);
            } else {
                assertEquals(due.other, answer.statusCode(), operation + " " + role + ": " + answer.asString());
                String text = answer.asString();
                assertFalse(text.contains(kept.quote) || text.contains(kept.batch) || text.contains(kept.book), text);
            }
        }));
    }

    @ParameterizedTest
    @MethodSource("operations")
    void nobodyComesInWithoutAShop(String operation) {
        String[] all = ROLES.toArray(String[]::new);
        Map<String, Object> shops = new LinkedHashMap<>();
        shops.put("none", null);
        shops.put("blank", " ");
        shops.put("a number", 7);
        shops.put("a list", List.of(OWN));
        shops.put("too long", "x".repeat(101));
        shops.put("two lines", "a\nb");
        assertAll(shops.entrySet().stream().<Executable>map(shop -> () -> {
            Response answer =
                    ask(operation, token(all).with("shop", shop.getValue()).signed());
            if (TABLE.get(operation).roles.equals(OPERATES)) {
                // of all shops, and of none
                assertEquals(200, answer.statusCode(), operation + " shop: " + shop.getKey());
            } else {
                assertProblem(403, "not-allowed", answer, operation + " shop: " + shop.getKey());
            }
        }));
    }

    @ParameterizedTest
    @MethodSource("operations")
    void noOtherSpellingOfAPathIsAWayIn(String operation) {
        String path = operation
                .split(" ")[1]
                .replace("{id}", kept.quote)
                .replace("{name}", kept.book)
                .replace("{n}", "1");
        for (String spelled : List.of(
                path + "/",
                path + "//",
                "/" + path,
                path.replace("/v1/", "/v1//"),
                path + ";x=1",
                "/v1/../" + path,
                path + "%20")) {
            for (String method : List.of("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH")) {
                int status = as(null).urlEncodingEnabled(false)
                        .request(method, spelled)
                        .statusCode();
                assertTrue(Set.of(400, 401, 404, 405, 415).contains(status), method + " " + spelled + ": " + status);
            }
        }
    }
}
