package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Quotes that are kept, printed. */
@QuarkusTest
class PrintTest {

    private static final ObjectMapper JSON = new ObjectMapper();

    private static ObjectNode request(String reference) throws IOException {
        ObjectNode request =
                (ObjectNode) JSON.readTree(Files.readString(Path.of("sample-jobs", "trail-buggy-rear-bay.json")));
        return request.put("customerReference", reference).put("validUntil", "2199-12-31");
    }

    private static String made(String reference) throws IOException {
        return given().contentType("application/json")
                .body(request(reference).toString())
                .post("/v1/quotes")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    private static ValidatableResponse print(String id, String query) {
        return given().get("/v1/quotes/" + id + "/print" + query).then();
    }

    @Test
    void aQuoteIsPrintedForTheCustomer() throws IOException {
        String id = made("Print <17>");
        print(id, "")
                .statusCode(200)
                .header("Content-Type", startsWith("text/html"))
                .header("Content-Security-Policy", startsWith("default-src 'none'; style-src 'sha256-"))
                .header("Cache-Control", "no-store")
                .body(containsString("Your reference: Print &lt;17&gt;"))
                .body(containsString("31\u00a0December\u00a02199"))
                .body(containsString("Ridge Lane Frames"))
                .body(containsString("Welding only"));
    }

    @Test
    void aPdfIsInTheUnitsAskedFor() throws IOException {
        String id = made("In inches");
        byte[] pdf = print(id, "?form=shop-floor&format=pdf&units=us")
                .statusCode(200)
                .header("Content-Type", equalTo("application/pdf"))
                .header("Content-Disposition", containsString("-1-shop-floor.pdf"))
                .extract()
                .asByteArray();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document);
            assertTrue(text.contains("ft³/h"), text);
            assertTrue(!text.contains("USD"), text);
        }
    }

    @Test
    void aRevisionIsPrintedAsItWasMade() throws IOException {
        String id = made("First words");
        given().contentType("application/json")
                .header("If-Match", given().get("/v1/quotes/" + id).header("ETag"))
                .body(request("Second words").toString())
                .post("/v1/quotes/" + id + "/revisions")
                .then()
                .statusCode(201);
        print(id, "?revision=1").statusCode(200).body(containsString("First words"));
        print(id, "").statusCode(200).body(containsString("Second words")).body(not(containsString("First words")));
        print(id, "?revision=3").statusCode(404);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "?form=welder",
                "?format=docx",
                "?revision=0",
                "?revision=",
                "?units=imperial",
                "?form=customer&form=customer",
                "?colour=yes"
            })
    void whatIsNoneIsRefused(String query) throws IOException {
        print(made("Refused"), query).statusCode(400).body("violations", hasSize(1));
    }

    @Test
    void anUnknownQuoteIsNotFound() {
        print("00000000-0000-4000-8000-000000000000", "").statusCode(404);
        print("none", "").statusCode(404);
    }
}
