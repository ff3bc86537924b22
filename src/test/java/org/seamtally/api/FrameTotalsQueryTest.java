package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What may be asked of a frame in brief. */
@QuarkusTest
class FrameTotalsQueryTest {

    private static final String TAB = """
            {"kind": "plate-fillet", "plate": {"thickness": "3 mm"}, "length": "20 mm"}""";

    private static ValidatableResponse ask(String query) {
        return given().contentType("application/json")
                .body("{\"frame\": {\"joints\": [%s, %s, %s]}}".formatted(TAB, TAB, TAB))
                .post("/v1/frame-totals" + query)
                .then();
    }

    @Test
    void oneJointIsToldInFull() {
        ask("?joint=2&units=us")
                .statusCode(200)
                .body("joints", hasSize(3))
                .body("joints[1].seamLength.unit", equalTo("in"))
                .body("joint.mark", equalTo("#2"));
        ask("").statusCode(200).body("joints", hasSize(3)).body("joint", nullValue());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "joint=0",
                "joint=4",
                "joint=-1",
                "joint=J2",
                "joint=",
                "joint=1&joint=2",
                "joint=9999999999",
                "course=true"
            })
    void whatIsNoPlaceInTheListIsRefused(String query) {
        ask("?" + query).statusCode(400).body("type", equalTo("/problems/bad-query"));
    }
}
