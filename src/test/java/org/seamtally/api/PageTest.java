package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.seamtally.page.EstimatorPage;

/** The page's document: where it may load from, what its forms are drawn from. */
@QuarkusTest
class PageTest {

    @Test
    void thePageMayLoadItsOwnFilesOnly() {
        given().get("/")
                .then()
                .statusCode(200)
                .contentType("text/html;charset=utf-8")
                .header("Content-Security-Policy", equalTo(EstimatorPage.CONTENT_SECURITY_POLICY))
                .header("X-Content-Type-Options", equalTo("nosniff"))
                .body(not(containsString("style=")), not(containsString("onclick")));
    }

    @Test
    void aNavigationIsAnsweredAndAnotherSitesIsNot() {
        given().header("Sec-Fetch-Site", "none").get("/").then().statusCode(200);
        given().header("Sec-Fetch-Site", "same-origin")
                .get("/page/main.js")
                .then()
                .statusCode(200);
        given().header("Sec-Fetch-Site", "cross-site")
                .get("/page/main.js")
                .then()
                .statusCode(403);
    }

    @Test
    void formsAreDrawnFromTheRequests() {
        String html = given().get("/").then().extract().asString();
        String json = html.replaceAll("(?s).*<script type=\"application/json\" id=\"rules\">(.*?)</script>.*", "$1");
        JsonNode rules = Document.read(json);
        List<String> sections = StreamSupport.stream(rules.path("sections").spliterator(), false)
                .map(section -> section.path("name").asText())
                .toList();
        assertEquals(List.of("steel", "filler", "arc", "gas", "preheat", "labour", "prices"), sections);
        JsonNode kinds = Document.read(
                given().get("/v1/catalogue/joint-kinds").then().extract().asString());
        assertEquals(kinds, rules.path("kinds"));
    }

    @Test
    void theExamplesToStartFromAreThere() {
        String html = given().get("/").then().extract().asString();
        List<String> files = java.util.regex.Pattern.compile("<option value=\"([^\"]+[.]json)\"")
                .matcher(html)
                .results()
                .map(found -> found.group(1))
                .toList();
        assertEquals(5, files.size());
        for (String file : files) {
            String request = given().get("/page/examples/" + file)
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString();
            given().contentType("application/json")
                    .body(request)
                    .post("/v1/frame-estimates")
                    .then()
                    .statusCode(200);
        }
    }

    @Test
    void filesAreAskedForAnewByANewerProgram() {
        given().get("/page/main.js").then().statusCode(200).header("Cache-Control", equalTo("no-cache"));
    }
}
