package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The service where it asks for tokens: shops apart, what looks after it, what is logged and what is not. */
@QuarkusTest
@TestProfile(Keyed.class)
class AccessTest {

    private static final String ONE = "Northside Tube";
    private static final String OTHER = "Harbour Frames";

    private static final String PRICES =
            "{\"effective\":\"2026-01-01\",\"prices\":{\"currency\":\"USD\",\"labour\":\"61.00/h\"}}";

    private static RequestSpecification as(Tokens token) {
        return Frames.request("application/json").header("Authorization", "Bearer " + token.signed());
    }

    private static Tokens estimator(String shop) {
        return Tokens.of(shop, "estimator");
    }

    private static String quote(String prices) {
        return Frames.frame(7).replaceAll("}$", "," + prices + "}");
    }

    private static final String OWN_PRICES = "\"prices\":{\"currency\":\"USD\",\"labour\":\"61.00/h\"}";

    private static String newBook(String shop) {
        String name = "book-" + UUID.randomUUID();
        assertEquals(
                201,
                as(Tokens.of(shop, "price-keeper"))
                        .body(PRICES.getBytes())
                        .put("/v1/price-books/" + name)
                        .statusCode());
        return name;
    }

    @BeforeEach
    void tablesAreMade() throws InterruptedException {
        Frames.await(
                "the tables are made",
                () -> as(Tokens.of(null, "operator"))
                                .get("/q/health/group/kept")
                                .statusCode()
                        == 200);
    }

    @Test
    void aPriceBookIsItsShopsAlone() {
        String book = newBook(ONE);
        byte[] request = quote("\"priceBook\":\"" + book + "\"").getBytes();
        assertEquals(201, as(estimator(ONE)).body(request).post("/v1/quotes").statusCode());
        Response refused = as(estimator(OTHER)).body(request).post("/v1/quotes");
        assertEquals(422, refused.statusCode(), refused.asString());
        // the very answer that a name gets which no shop has
        Response unknown = as(estimator(OTHER))
                .body(quote("\"priceBook\":\"nobody-has-this\"").getBytes())
                .post("/v1/quotes");
        assertEquals(withoutId(unknown).replace("nobody-has-this", book), withoutId(refused));
        // both may have one of the same name
        assertEquals(
                201,
                as(Tokens.of(OTHER, "price-keeper"))
                        .body(PRICES.replace("61", "99").getBytes())
                        .put("/v1/price-books/" + book)
                        .statusCode());
        assertEquals(
                "61.00/h",
                as(Tokens.of(ONE, "reader"))
                        .get("/v1/price-books/" + book + "/versions/1")
                        .path("prices.labour"));
    }

    /** A problem without the name of its request. */
    private static String withoutId(Response problem) {
        return problem.asString().replaceFirst("\"instance\":\"[^\"]*\"", "");
    }

    @Test
    void keysOfTwoShopsAreTwoKeys() {
        byte[] request = quote(OWN_PRICES).getBytes();
        String key = UUID.randomUUID().toString();
        List<String> ids = List.of(ONE, OTHER).stream()
                .map(shop -> as(estimator(shop))
                        .header("Idempotency-Key", key)
                        .body(request)
                        .post("/v1/quotes")
                        .<String>path("id"))
                .toList();
        assertEquals(2, Set.copyOf(ids).size());
        assertEquals(404, as(estimator(OTHER)).get("/v1/quotes/" + ids.get(0)).statusCode());
        // nor does another's id say where a list goes on
        assertEquals(
                List.of(),
                as(estimator(OTHER)).get("/v1/quotes?after=" + ids.get(0)).path("items"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/q/health", "/q/health/group/kept", "/q/health/well", "/q/metrics", "/q/nothing", "/q", "/q/"})
    void whatLooksAfterTheServiceIsForItsOperator(String path) {
        Response unknown = given().get(path);
        assertEquals(401, unknown.statusCode(), path);
        assertEquals("application/problem+json", unknown.contentType());
        assertEquals("Bearer", unknown.header("WWW-Authenticate"));
        Response known = as(Tokens.of(ONE, "estimator", "price-keeper", "reader", "machine"))
                .get(path);
        assertEquals(403, known.statusCode(), path);
        assertEquals("application/problem+json", known.contentType());
        assertEquals("/problems/not-allowed", known.path("type"));
        int status = as(Tokens.of(null, "operator")).get(path).statusCode();
        assertTrue(Set.of(200, 404).contains(status), path + " " + status);
    }

    @Test
    void metricsAreTheOperators() {
        Response metrics = Frames.request("text/plain")
                .header("Authorization", "Bearer " + Tokens.of(null, "operator").signed())
                .get("/q/metrics");
        assertEquals(200, metrics.statusCode());
        assertTrue(metrics.asString().contains("seamtally_"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/q/health/live", "/q/health/ready", "/q/health/started"})
    void probesNeedNoToken(String path) {
        assertEquals(200, given().get(path).statusCode());
    }

    @Test
    void theDocumentIsForWhoeverIsKnown() {
        assertEquals(401, given().get("/q/openapi").statusCode());
        assertEquals(200, as(Tokens.of(null)).get("/q/openapi").statusCode());
    }

    @Test
    void thePageIsOffAndSaysSo() {
        Response off = given().get("/");
        assertEquals(403, off.statusCode());
        assertTrue(off.contentType().startsWith("text/html"), off.contentType());
        assertTrue(off.asString().contains("The page is off"));
        assertFalse(off.asString().contains("main.js"));
    }

    @Test
    void itAnswersUnderAnyNameAndNoOtherSitesPage() throws Exception {
        String token = "Authorization: Bearer " + estimator(ONE).signed();
        assertEquals(
                200,
                RawRequest.lines("GET /v1/quotes HTTP/1.1", "Host: quotes.shop.example", "Connection: close", token)
                        .status());
        for (String from : List.of("Origin: https://other.example", "Sec-Fetch-Site: cross-site")) {
            RawRequest.Answer refused = RawRequest.lines(
                    "GET /v1/quotes HTTP/1.1", "Host: quotes.shop.example", "Connection: close", token, from);
            assertEquals(403, refused.status());
            assertTrue(refused.body().contains("foreign-origin"));
            assertNull(refused.header("Access-Control-Allow-Origin"));
        }
        RawRequest.Answer preflight = RawRequest.lines(
                "OPTIONS /v1/quotes HTTP/1.1",
                "Host: quotes.shop.example",
                "Connection: close",
                "Origin: https://other.example",
                "Access-Control-Request-Method: POST");
        assertEquals(403, preflight.status());
        assertNull(preflight.header("Access-Control-Allow-Origin"));
    }

    @Test
    void eachChangeOfAPriceBookOrAQuoteIsALineOfTheAudit() {
        try (LogLines log = LogLines.of(Audit.CATEGORY)) {
            String book = newBook(ONE);
            String who = "sam\nof \"both\"";
            Tokens token = estimator(ONE).with("sub", who);
            byte[] request = quote(OWN_PRICES).getBytes();
            String key = UUID.randomUUID().toString();
            String id = as(token)
                    .header("Idempotency-Key", key)
                    .body(request)
                    .post("/v1/quotes")
                    .path("id");
            // the same once more changes nothing
            assertEquals(
                    id,
                    as(token)
                            .header("Idempotency-Key", key)
                            .body(request)
                            .post("/v1/quotes")
                            .path("id"));
            assertEquals(
                    201,
                    as(token)
                            .header("If-Match", "\"1\"")
                            .body(request)
                            .post("/v1/quotes/" + id + "/revisions")
                            .statusCode());
            assertEquals(
                    412,
                    as(token)
                            .header("If-Match", "\"1\"")
                            .body(request)
                            .post("/v1/quotes/" + id + "/revisions")
                            .statusCode());
            String by = " by \"sam\\nof \\\"both\\\"\" of \"" + ONE + "\"";
            assertEquals(
                    List.of(
                            "price book \"" + book + "\" version 1 by \"somebody of " + ONE + "\" of \"" + ONE + "\"",
                            "quote " + id + " revision 1" + by,
                            "quote " + id + " revision 2" + by),
                    log.lines());
        }
    }

    @Test
    void aTokenIsNeitherLoggedNorToldBack() {
        for (String token : List.of(
                estimator(ONE).forged(),
                estimator(ONE).with("exp", 1).signed(),
                estimator(ONE).with("iss", "https://other.example").signed(),
                estimator(ONE).unsigned(),
                "not.a.token-that-is-one",
                estimator(ONE).signed() + "x")) {
            try (LogLines log = LogLines.of("")) {
                Response refused =
                        given().header("Authorization", "Bearer " + token).get("/v1/quotes");
                assertEquals(401, refused.statusCode());
                String told = log.lines() + refused.headers().toString() + refused.asString();
                for (String part : token.split("\\.")) {
                    assertFalse(part.length() > 5 && told.contains(part), told);
                }
            }
        }
    }

    @Test
    void aLineOfTheLogAsJsonNamesItsRequestAndHoldsNoSecret() throws IOException {
        String name = "asked-" + UUID.randomUUID();
        String token = Tokens.of(ONE, "price-keeper").signed();
        String book = "book-" + UUID.randomUUID();
        assertEquals(
                201,
                Frames.request("application/json")
                        .header("Authorization", "Bearer " + token)
                        .header(RequestId.HEADER, name)
                        .body(PRICES.replace("61.00", "61.37").getBytes())
                        .put("/v1/price-books/" + book)
                        .statusCode());
        String log = Files.readString(Path.of(Keyed.LOG));
        List<JsonNode> lines = new ArrayList<>();
        for (String line : log.lines().toList()) {
            JsonNode parsed = new ObjectMapper().readTree(line);
            if (parsed.at("/mdc/requestId").asText().equals(name)) {
                lines.add(parsed);
            }
        }
        assertEquals(1, lines.size(), lines.toString());
        assertEquals(Audit.CATEGORY, lines.get(0).path("loggerName").asText());
        assertEquals("INFO", lines.get(0).path("level").asText());
        assertTrue(lines.get(0).path("message").asText().startsWith("price book \"" + book + "\""), lines.toString());
        assertFalse(log.contains("61.37"), "a price in the log");
        for (String part : token.split("\\.")) {
            assertFalse(log.contains(part), "a token in the log");
        }
    }

    @Test
    void noAnswerWithPricesIsKeptByACache() {
        String id = as(estimator(ONE))
                .body(quote(OWN_PRICES).getBytes())
                .post("/v1/quotes")
                .path("id");
        Response estimate = as(estimator(ONE)).body(Frames.frame(1).getBytes()).post("/v1/frame-estimates");
        assertEquals(200, estimate.statusCode());
        for (Response answer : List.of(
                estimate,
                given().get("/v1/quotes"),
                as(estimator(ONE)).get("/v1/quotes"),
                as(estimator(ONE)).get("/v1/quotes/" + id + "/print"),
                as(estimator(ONE)).get("/v1/price-books"),
                as(estimator(ONE)).get("/v1/batches"))) {
            assertEquals(List.of("no-store"), answer.headers().getValues("Cache-Control"));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"/", "/v1/quotes", "/v1/nothing", "/q/health/live", "/q/metrics", "/page/main.js", "/nothing"})
    void everyAnswerTellsBrowsersWhatTheyMayDoWithIt(String path) {
        for (Response answer : List.of(
                given().get(path), as(Tokens.of(ONE, "estimator", "operator")).get(path))) {
            for (List<String> header : List.of(
                    List.of("X-Content-Type-Options", "nosniff"),
                    List.of("X-Frame-Options", "DENY"),
                    List.of("Referrer-Policy", "no-referrer"),
                    List.of("Cross-Origin-Resource-Policy", "same-origin"))) {
                assertEquals(header.subList(1, 2), answer.headers().getValues(header.get(0)), path);
            }
        }
    }
}
