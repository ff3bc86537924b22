package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.http.Cookie;
import io.restassured.http.Cookies;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.net.URL;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The page where people log in at a provider, and programs bring that provider's tokens. */
@QuarkusTest
@TestProfile(PageLogInTest.LogIn.class)
class PageLogInTest {

    public static final class LogIn implements QuarkusTestProfile {

        @Override
        public List<TestResourceEntry> testResources() {
            return List.of(new TestResourceEntry(ProviderStub.class));
        }
    }

    private static final String SHOP = "Northside Tube";

    // as a browser asks for a page that somebody goes to, from wherever he was
    private static RequestSpecification browser() {
        return given().redirects()
                .follow(false)
                .header("Accept", "text/html")
                .header("Sec-Fetch-Site", "cross-site")
                .header("Sec-Fetch-Mode", "navigate")
                .header("Sec-Fetch-Dest", "document");
    }

    /** Cookies that a browser has after an answer. */
    private static Map<String, String> kept(Map<String, String> before, Response answer) {
        Map<String, String> cookies = new LinkedHashMap<>(before);
        for (Cookie cookie : answer.detailedCookies()) {
            if (cookie.getMaxAge() == 0) {
                cookies.remove(cookie.getName());
            } else {
                cookies.put(cookie.getName(), cookie.getValue());
            }
        }
        return cookies;
    }

    private record Session(Map<String, String> cookies, Cookies set) {

        RequestSpecification asks() {
            return Frames.request("application/json").cookies(cookies).header("Sec-Fetch-Site", "same-origin");
        }

        String csrf() {
            return cookies.get(PageWrites.COOKIE);
        }
    }

    /** Somebody logs in, as far as the page. */
    private static Session logIn(String sub, String shop, String roles) {
        Response away = browser().get("/");
        assertEquals(302, away.statusCode(), away.asString());
        String place = away.header("Location");
        Map<String, String> asked = ProviderStub.query(place);
        assertEquals("code", asked.get("response_type"));
        assertEquals("S256", asked.get("code_challenge_method"));
        assertEquals(ProviderStub.CLIENT, asked.get("client_id"));
        assertTrue(asked.get("redirect_uri").endsWith("/"), asked.get("redirect_uri"));
        assertFalse(asked.get("nonce").isBlank());
        Map<String, String> cookies = kept(Map.of(), away);
        Response back = given().redirects()
                .follow(false)
                // it is encoded, as a browser goes to it
                .urlEncodingEnabled(false)
                .get(place + "&sub=" + sub + "&shop=" + URLEncoder.encode(shop, StandardCharsets.UTF_8) + "&roles="
                        + roles);
        assertEquals(302, back.statusCode(), back.asString());
        Response in = browser().cookies(cookies).urlEncodingEnabled(false).get(back.header("Location"));
        assertEquals(302, in.statusCode(), in.asString());
        cookies = kept(cookies, in);
        Response page = browser().cookies(cookies).get("/");
        assertEquals(200, page.statusCode(), page.asString());
        assertTrue(page.asString().contains("main.js"));
        assertEquals("no-store", page.header("Cache-Control"));
        return new Session(kept(cookies, page), in.detailedCookies());
    }

    @BeforeEach
    void tablesAreMade() throws InterruptedException {
        Session operator = logIn("op", SHOP, "operator");
        Frames.await(
                "the tables are made",
                () -> operator.asks().get("/q/health/group/kept").statusCode() == 200);
    }

    private static byte[] quote() {
        return Frames.frame(7)
                .replaceAll("}$", ",\"prices\":{\"currency\":\"USD\",\"labour\":\"61.00/h\"}}")
                .getBytes();
    }

    @Test
    void whoLogsInSeesThePageAndWhatHisShopKeeps() {
        Session estimator = logIn("sam", SHOP, "estimator");
        assertEquals(200, estimator.asks().get("/v1/quotes").statusCode());
        String id = estimator
                .asks()
                .header(PageWrites.HEADER, estimator.csrf())
                .body(quote())
                .post("/v1/quotes")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
        assertEquals(
                200, logIn("kim", SHOP, "reader").asks().get("/v1/quotes/" + id).statusCode());
        assertEquals(
                404,
                logIn("lee", "Harbour Frames", "estimator")
                        .asks()
                        .get("/v1/quotes/" + id)
                        .statusCode());
        assertEquals(403, logIn("max", SHOP, "machine").asks().get("/v1/quotes").statusCode());
    }

    @Test
    void theSessionIsOutOfReachOfScriptsAndOtherSites() {
        Session estimator = logIn("sam", SHOP, "estimator");
        List<Cookie> session = estimator.set().asList().stream()
                .filter(cookie -> cookie.getName().startsWith("q_session"))
                .filter(cookie -> cookie.getMaxAge() != 0)
                .toList();
        assertFalse(session.isEmpty());
        for (Cookie cookie : session) {
            assertTrue(cookie.isHttpOnly(), cookie.toString());
            assertEquals("lax", cookie.getSameSite().toLowerCase(java.util.Locale.ROOT), cookie.toString());
            // it is encrypted
            assertFalse(cookie.getValue().startsWith("eyJhbGciOiJSUzI1NiI"), cookie.toString());
        }
    }

    @Test
    void aWriteBringsWhatOnlyThePageHas() {
        Session sam = logIn("sam", SHOP, "estimator");
        Session kim = logIn("kim", SHOP, "estimator");
        for (RequestSpecification forged : List.of(
                sam.asks(),
                sam.asks().header(PageWrites.HEADER, ""),
                sam.asks().header(PageWrites.HEADER, "guessed"),
                sam.asks().header(PageWrites.HEADER, kim.csrf()),
                // another header does not make a session into something else
                sam.asks().header("Authorization", "Basic c2FtOnNhbQ=="))) {
            Response refused = forged.body(quote()).post("/v1/quotes");
            assertTrue(List.of(401, 403).contains(refused.statusCode()), refused.asString());
            assertEquals("application/problem+json", refused.contentType());
        }
        Response refused = sam.asks().body(Frames.frame(1).getBytes()).post("/v1/frame-estimates");
        assertEquals(403, refused.statusCode());
        assertEquals("/problems/not-from-the-page", refused.path("type"));
        assertEquals(
                200,
                sam.asks()
                        .header(PageWrites.HEADER, sam.csrf())
                        .body(Frames.frame(1).getBytes())
                        .post("/v1/frame-estimates")
                        .statusCode());
    }

    @Test
    void aRequestOfThePageWithoutASessionIsToldAndNotSentAway() {
        for (Response answer : List.of(
                given().redirects().follow(false).get("/v1/quotes"),
                given().redirects().follow(false).cookie("q_session", "made-up").get("/v1/quotes"))) {
            assertEquals(401, answer.statusCode());
            assertEquals("application/problem+json", answer.contentType());
        }
    }

    @Test
    void otherSitesReachNothingButThePage() {
        Session sam = logIn("sam", SHOP, "estimator");
        assertEquals(403, browser().cookies(sam.cookies()).get("/v1/quotes").statusCode());
        assertEquals(
                403,
                browser()
                        .cookies(sam.cookies())
                        .header("Origin", "https://other.example")
                        .get("/")
                        .statusCode());
        assertEquals(
                403,
                Frames.request("application/json")
                        .cookies(sam.cookies())
                        .header("Sec-Fetch-Site", "cross-site")
                        .header(PageWrites.HEADER, sam.csrf())
                        .body(quote())
                        .post("/v1/quotes")
                        .statusCode());
    }

    @Test
    void aMadeUpCodeOrStateLogsNobodyIn() {
        Response answer = browser()
                .queryParam("code", "e30")
                .queryParam("state", "made-up")
                .get("/");
        assertTrue(List.of(302, 401).contains(answer.statusCode()), "status " + answer.statusCode());
        Response away = browser().get("/");
        Response refused = browser()
                .cookies(kept(Map.of(), away))
                .queryParam("code", "e30")
                .queryParam("state", ProviderStub.query(away.header("Location")).get("state"))
                .get("/");
        assertEquals(401, refused.statusCode());
        assertFalse(refused.detailedCookies().hasCookieWithName("q_session"));
    }

    @Test
    void programsBringTheProvidersTokens() {
        Session sam = logIn("sam", SHOP, "estimator");
        String issuer = provider();
        Tokens token = Tokens.of(SHOP, "estimator").with("iss", issuer);
        assertEquals(
                201, bearer(token.signed()).body(quote()).post("/v1/quotes").statusCode());
        assertEquals(401, bearer(token.forged()).get("/v1/quotes").statusCode());
        assertEquals(401, bearer("opaque").get("/v1/quotes").statusCode());
        assertEquals(
                401,
                bearer(Tokens.of(SHOP, "estimator").signed()).get("/v1/quotes").statusCode());
        // a token that is not taken is not made good by a session beside it
        assertEquals(
                401,
                sam.asks()
                        .header("Authorization", "Bearer " + token.forged())
                        .get("/v1/quotes")
                        .statusCode());
    }

    @TestHTTPResource(value = "/q/health/live", tls = true)
    private URL encrypted;

    @Test
    void withAKeyStoreItSpeaksTls() {
        assertEquals("https", encrypted.getProtocol());
        Response answer = given().relaxedHTTPSValidation().get(encrypted);
        assertEquals(200, answer.statusCode());
        assertEquals("max-age=31536000", answer.header("Strict-Transport-Security"));
        assertEquals(null, given().get("/q/health/live").header("Strict-Transport-Security"));
    }

    private static RequestSpecification bearer(String token) {
        return Frames.request("application/json").header("Authorization", "Bearer " + token);
    }

    private static String provider() {
        return org.eclipse.microprofile.config.ConfigProvider.getConfig()
                .getValue("seamtally.access.provider", String.class);
    }
}
