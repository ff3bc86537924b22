package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Where as much waits as may, estimates are sent away before they are read; all else goes on; then it is as before. */
@QuarkusTest
@TestProfile(AdmissionTest.OnePlace.class)
class AdmissionTest {

    public static final class OnePlace implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "seamtally.estimates.at-once", "1",
                    "seamtally.estimates.waiting-bytes", "4096",
                    "seamtally.estimates.longest-wait", "1M");
        }
    }

    private static final String PLUG =
            "{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": \"6 mm\", \"depth\": \"2 mm\"}}";

    @Inject
    Admission admission;

    private CompletableFuture<Void> occupy(int bytes, CountDownLatch end) {
        Runnable occupying = () -> {
            try {
                admission
                        .estimates()
                        .<Void, InterruptedException>work(new ByteArrayInputStream(new byte[bytes]), arrived -> {
                            end.await();
                            return null;
                        });
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        };
        // each waits on a thread of its own: the common pool may have one alone
        return CompletableFuture.runAsync(occupying, task -> new Thread(task).start());
    }

    private static void await(java.util.function.BooleanSupplier state) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.MINUTES.toNanos(1);
        while (!state.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "it never came to that");
            Thread.sleep(1);
        }
    }

    private static Response post() {
        return given().contentType("application/json")
                .header(RequestId.HEADER, "order-7")
                .body(PLUG)
                .post("/v1/deposits");
    }

    private static double counted(String outcome) {
        return given().get("/q/metrics")
                .asString()
                .lines()
                .filter(line -> line.startsWith("seamtally_estimates_total{")
                        && line.contains("endpoint=\"deposits\"")
                        && line.contains("outcome=\"" + outcome + "\""))
                .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' ') + 1)))
                .sum();
    }

    @Test
    void whatWouldOnlyWaitIsSentAwayAndItRecoversByItself() throws Exception {
        double shed = counted("shed");
        double answered = counted("answered");
        CountDownLatch end = new CountDownLatch(1);
        CompletableFuture<Void> working = occupy(1, end);
        await(() -> admission.estimates().working() == 1);
        CompletableFuture<Void> waiting = occupy(4096, end);
        await(() -> admission.estimates().waiting() == 1);
        // after a while it is no burst any more
        await(admission.estimates()::isFull);
        try {
            Response refused = post();
            assertEquals(503, refused.statusCode());
            assertEquals("1", refused.header("Retry-After"));
            assertEquals("application/problem+json", refused.contentType());
            assertEquals("order-7", refused.header(RequestId.HEADER));
            JsonNode problem = Document.read(refused.asString());
            assertEquals(Set.of(), Document.live().misfits(problem, "ProblemReport"));
            assertEquals("/problems/busy", problem.path("type").asText());
            assertEquals("/requests/order-7", problem.path("instance").asText());
            // shed before the body is read: one that never comes is answered all the same
            assertEquals(
                    503,
                    RawRequest.lines(
                                    "POST /v1/deposits HTTP/1.1",
                                    "Host: localhost",
                                    "Content-Type: application/json",
                                    "Content-Length: 1000000")
                            .status());
            assertEquals(200, given().get("/q/health/ready").statusCode());
            assertEquals(200, given().get("/v1/catalogue/steels").statusCode());
            assertEquals(
                    200,
                    Frames.request("application/x-ndjson")
                            .body(Frames.line(1).getBytes())
                            .post("/v1/frame-estimates")
                            .statusCode());
        } finally {
            end.countDown();
        }
        working.get(1, TimeUnit.MINUTES);
        waiting.get(1, TimeUnit.MINUTES);
        assertEquals(200, post().statusCode());
        await(() -> counted("answered") == answered + 1);
        assertEquals(shed + 2, counted("shed"));
    }

    @Test
    void aProblemNamesItsRequest() {
        Response refused = given().contentType("application/json").body("{").post("/v1/deposits");
        assertEquals(400, refused.statusCode());
        String id = refused.header(RequestId.HEADER);
        assertEquals(
                "/requests/" + id,
                Document.read(refused.asString()).path("instance").asText());
        assertEquals(36, id.length());
        assertEquals("order-7", post().header(RequestId.HEADER));
    }
}
