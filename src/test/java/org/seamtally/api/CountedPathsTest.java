package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Requests are counted by endpoint, whatever paths are made up. */
@QuarkusTest
class CountedPathsTest {

    @Test
    void aPathThatNoEndpointTookIsCountedAsTheOneThatItHas() {
        String made = "made-up-" + UUID.randomUUID();
        for (int i = 0; i < 3; i++) {
            given().patch("/v1/price-books/" + made + i).then().statusCode(405);
            given().delete("/v1/quotes/" + made + i).then().statusCode(405);
            given().get("/v1/" + made + i).then().statusCode(404);
        }
        // a request is counted just after its answer has gone
        given().patch("/v1/price-books/" + made).then().statusCode(405);

        List<String> counted = given().accept("text/plain")
                .get("/q/metrics")
                .asString()
                .lines()
                .filter(line -> line.startsWith("http_server_requests_seconds_count"))
                .toList();
        assertEquals(
                List.of(), counted.stream().filter(line -> line.contains(made)).toList());
        for (String endpoint : List.of("/v1/price-books/{name}", "/v1/quotes/{id}")) {
            assertTrue(
                    counted.stream()
                            .anyMatch(line ->
                                    line.contains("uri=\"" + endpoint + "\"") && line.contains("status=\"405\"")),
                    counted::toString);
        }
    }
}
