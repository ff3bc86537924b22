package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The places along a seam, where they are asked for. */
@QuarkusTest
class CourseTest {

    private static final String FILLET = """
            {"joint": {"kind": "plate-fillet", "plate": {"thickness": "5 mm"}, "length": "80 mm",
                       "fillet": {"leg": "3 mm"}}}""";

    private static final String PLUG = """
            {"joint": {"kind": "plug", "holeDiameter": "8 mm", "depth": "3 mm"}}""";

    private static ValidatableResponse ask(String body, String query) {
        return given().contentType("application/json")
                .body(body)
                .post("/v1/deposits" + query)
                .then();
    }

    @Test
    void aSeamIsToldFromItsStartToItsEnd() {
        ask(FILLET, "?course=true")
                .statusCode(200)
                .body("course", hasSize(181))
                .body("course[0].along.value", equalTo(0.0f))
                .body("course[180].along.value", equalTo(80.0f))
                .body("course[90].dihedralAngle.value", equalTo(90.0f))
                .body("course[90].section.value", equalTo(4.5f))
                .body("course[90].section.unit", equalTo("mm2"));
        ask(FILLET, "?course=true&units=us")
                .statusCode(200)
                .body("course[180].along.unit", equalTo("in"))
                .body("course[180].along.value.toDouble()", closeTo(80 / 25.4, 1e-6));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "?course=false", "?units=us"})
    void notAskedForItIsLeftOut(String query) {
        ask(FILLET, query).statusCode(200).body("course", nullValue());
    }

    @Test
    void aPlugHasNone() {
        ask(PLUG, "?course=true").statusCode(200).body("course", nullValue());
    }

    @ParameterizedTest
    @ValueSource(strings = {"?course=yes", "?course=true&course=false", "?course=true&points=3"})
    void anythingElseIsRefused(String query) {
        ask(FILLET, query).statusCode(400).body("violations", hasSize(1));
    }

    @Test
    void otherEndpointsTakeNoSuchParameter() {
        given().contentType("application/json")
                .body(FILLET)
                .post("/v1/arc-times?course=true")
                .then()
                .statusCode(400);
    }
}
