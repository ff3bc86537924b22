package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A sender who stalls holds his place until the server stops waiting; nobody else is held up for long. */
@QuarkusTest
@TestProfile(StalledStreamTest.OneStreamAtATime.class)
class StalledStreamTest {

    public static final class OneStreamAtATime implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("seamtally.streams.most", "1", "quarkus.http.read-timeout", "2s");
        }
    }

    @Inject
    OpenStreams streams;

    private static Response post(String path) {
        return Frames.request("application/x-ndjson")
                .body(Frames.line(1).getBytes())
                .post(path);
    }

    @Test
    void asManyAsMayBeAreUnderWayAndTheNextOneIsToldToAskAgain() {
        try (OpenStreams.Place place = streams.begin()) {
            for (String path : List.of("/v1/frame-estimates", "/v1/batches")) {
                Response busy = post(path);
                assertEquals(503, busy.statusCode(), busy.asString());
                assertEquals("/problems/busy", busy.jsonPath().getString("type"));
                assertEquals("5", busy.header("Retry-After"));
            }
            assertEquals(
                    200,
                    given().contentType("application/json")
                            .body(Frames.frame(1))
                            .post("/v1/frame-estimates")
                            .statusCode());
            place.close();
            assertEquals(1, streams.free(), "closing twice gives one place back");
        }
        assertEquals(1, streams.free());
        assertEquals(200, post("/v1/frame-estimates").statusCode());
    }

    @Test
    void aSenderWhoStallsIsGivenUpAndFreesHisPlace() throws Exception {
        try (Logged logged = new Logged();
                LiveRequest stalled =
                        new LiveRequest("POST", "/v1/frame-estimates", "Content-Type: application/x-ndjson")) {
            stalled.send(Frames.line(1));
            assertEquals(1, Document.read(stalled.line()).path("line").asInt());
            assertEquals(List.of(), stalled.linesUntilCut());
            Frames.await("the place is free again", () -> streams.free() == 1);
            assertEquals(List.of(), logged.errors());
        }
        assertEquals(200, post("/v1/frame-estimates").statusCode());
    }
}
