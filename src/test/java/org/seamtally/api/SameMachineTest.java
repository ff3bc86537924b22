package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** As long as the service is open, it answers to its own machine alone, on every path. */
@QuarkusTest
class SameMachineTest {

    private static final String[] PATHS = {"/v1/catalogue/fuels", "/q/health", "/q/metrics", "/q/openapi", "/nothing"};

    private static RawRequest.Answer get(String path, String... headers) throws IOException {
        String[] lines = new String[headers.length + 2];
        lines[0] = "GET " + path + " HTTP/1.1";
        lines[1] = "Connection: close";
        System.arraycopy(headers, 0, lines, 2, headers.length);
        return RawRequest.lines(lines);
    }

    private static void assertRefused(int status, String word, RawRequest.Answer answer) {
        assertEquals(status, answer.status(), answer.head());
        assertEquals("application/problem+json", answer.header("Content-Type"));
        JsonNode problem = Document.read(answer.body());
        assertEquals(Set.of(), Document.live().misfits(problem, "ProblemReport"));
        assertEquals("/problems/" + word, problem.path("type").asText());
        assertFalse(answer.body().contains("Stack"), answer.body());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "localhost",
                "127.0.0.1",
                "[::1]",
                "localhost:8080",
                "127.0.0.1:1",
                "[::1]:65535",
                "LOCALHOST",
                "LocalHost:80"
            })
    void answersUnderItsOwnNames(String host) throws IOException {
        assertEquals(200, get("/v1/catalogue/fuels", "Host: " + host).status());
        assertEquals(200, get("/q/health", "Host: " + host).status());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "shop.example",
                "shop.example:8080",
                "localhost.shop.example",
                "127.0.0.1.shop.example",
                "localhost.",
                "127.0.0.2",
                "0.0.0.0",
                "[::2]",
                "192.168.0.10",
                "notlocalhost"
            })
    void refusesAnotherName(String host) throws IOException {
        for (String path : PATHS) {
            assertRefused(403, "foreign-host", get(path, "Host: " + host));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"localhost:80.shop.example", "localhost:x", "shop example"})
    void aHostThatIsNoneIsNotAnswered(String host) throws IOException {
        int status = get("/v1/catalogue/fuels", "Host: " + host).status();
        assertEquals(true, status == 400 || status == 403, host + " gave " + status);
    }

    @Test
    void aMissingHostIsABadRequest() throws IOException {
        for (String path : PATHS) {
            assertRefused(400, "bad-request", get(path));
        }
        assertRefused(403, "foreign-host", get("/q/health", "Host:"));
    }

    @Test
    void aTargetWithAnotherHostInItIsRefusedToo() throws IOException {
        int status = get("http://shop.example/v1/catalogue/fuels", "Host: shop.example")
                .status();
        assertEquals(403, status);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://shop.example",
                "http://shop.example:8080",
                "null",
                "http://localhost.shop.example",
                "http://127.0.0.1.shop.example",
                "http://localhost@shop.example",
                "file://",
                "garbage",
                "http://localhost:3000",
                "http://127.0.0.1",
                "http://"
            })
    void refusesAPageOfAnotherOrigin(String origin) throws IOException {
        for (String path : PATHS) {
            assertRefused(403, "foreign-origin", get(path, "Host: localhost", "Origin: " + origin));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"localhost:8080", "127.0.0.1", "[::1]:8080", "LOCALHOST:3000"})
    void answersAPageThatItServedItself(String host) throws IOException {
        for (String scheme : new String[] {"http://", "https://"}) {
            assertEquals(
                    200,
                    get("/v1/catalogue/fuels", "Host: " + host, "Origin: " + scheme + host)
                            .status());
        }
    }

    @Test
    void refusesWhatABrowserCallsCrossSite() throws IOException {
        for (String path : PATHS) {
            assertRefused(403, "foreign-origin", get(path, "Host: localhost", "Sec-Fetch-Site: cross-site"));
            assertRefused(403, "foreign-origin", get(path, "Host: localhost", "Sec-Fetch-Site: Cross-Site"));
        }
        for (String own : new String[] {"same-origin", "none", "same-site"}) {
            assertEquals(
                    200,
                    get("/v1/catalogue/fuels", "Host: localhost", "Sec-Fetch-Site: " + own)
                            .status());
        }
    }

    @Test
    void grantsNoOtherSiteAnything() throws IOException {
        RawRequest.Answer preflight = RawRequest.lines(
                "OPTIONS /v1/deposits HTTP/1.1",
                "Host: localhost",
                "Connection: close",
                "Origin: https://shop.example",
                "Access-Control-Request-Method: POST",
                "Access-Control-Request-Headers: content-type");
        assertRefused(403, "foreign-origin", preflight);
        assertEquals(null, preflight.header("Access-Control-Allow-Origin"));
    }
}
