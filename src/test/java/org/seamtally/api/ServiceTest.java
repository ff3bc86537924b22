package org.seamtally.api;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** Health and metrics, and many requests at a time. */
@QuarkusTest
class ServiceTest {

    @Test
    void isHealthyOnceItHasWorkedSomethingOut() {
        for (String path : List.of("/q/health", "/q/health/ready")) {
            JsonNode health = Document.read(given().get(path).asString());
            assertEquals("UP", health.path("status").asText(), path);
            assertTrue(health.path("checks").findValuesAsText("name").contains("estimates"), health.toString());
        }
        assertEquals(200, given().get("/q/health/live").statusCode());
    }

    @Test
    void countsTheGasStartsThatItKnewAndThatItComputed() {
        // a flow that no other test asks for has to be computed once, and is known after that
        String body = "{\"gas\": {\"flow\": \"6.54321 L/min\"}, \"arc\": {\"current\": \"91 A\"}}";
        double computed = metric("seamtally_gas_starts_computed_total");
        assertEquals(200, gasLoss(body).statusCode());
        double afterFirst = metric("seamtally_gas_starts_computed_total");
        assertTrue(afterFirst > computed, computed + " then " + afterFirst);
        double known = metric("seamtally_gas_starts_known_total");
        assertEquals(200, gasLoss(body).statusCode());
        assertEquals(afterFirst, metric("seamtally_gas_starts_computed_total"));
        assertTrue(metric("seamtally_gas_starts_known_total") > known);
        assertTrue(metric("seamtally_gas_starts_kept") >= 1);
    }

    @Test
    void countsTheSeamsThatItKnewAndThatItComputed() {
        String body = "{\"frame\": {\"joints\": [{\"kind\": \"tube-to-tube\", \"branch\": {\"outsideDiameter\":"
                + " \"31.7531 mm\", \"wall\": \"2 mm\"}, \"main\": {\"outsideDiameter\": \"40 mm\", \"wall\":"
                + " \"2 mm\"}}]}}";
        double computed = metric("seamtally_seams_computed_total");
        String first = frame(body);
        assertEquals(computed + 1, metric("seamtally_seams_computed_total"));
        double known = metric("seamtally_seams_known_total");
        assertEquals(first, frame(body));
        assertEquals(computed + 1, metric("seamtally_seams_computed_total"));
        assertEquals(known + 1, metric("seamtally_seams_known_total"));
        assertTrue(metric("seamtally_seams_kept") >= 1);
    }

    private static String frame(String body) {
        Response response = given().contentType("application/json").body(body).post("/v1/frame-estimates");
        assertEquals(200, response.statusCode());
        return response.asString();
    }

    private static Response gasLoss(String body) {
        return given().contentType("application/json").body(body).post("/v1/gas-losses");
    }

    private static double metric(String name) {
        return given().accept("text/plain")
                .get("/q/metrics")
                .asString()
                .lines()
                .filter(line -> line.startsWith(name + " ") || line.startsWith(name + "{"))
                .mapToDouble(line -> Double.parseDouble(line.substring(line.lastIndexOf(' '))))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void requestsAtOneTimeAreAnsweredAlike() throws Exception {
        String body = Files.readString(Path.of("sample-jobs", "trail-buggy-rear-bay.json"));
        int askers = 8;
        int each = 5;
        CountDownLatch start = new CountDownLatch(1);
        ExecutorService pool = Executors.newFixedThreadPool(askers);
        try {
            List<Future<Set<String>>> all = new ArrayList<>();
            for (int i = 0; i < askers; i++) {
                String units = i % 2 == 0 ? "si" : "us";
                all.add(pool.submit(() -> {
                    start.await();
                    Set<String> answers = new HashSet<>();
                    for (int n = 0; n < each; n++) {
                        answers.add(estimate(body, units).asString());
                    }
                    return answers;
                }));
            }
            start.countDown();
            Set<String> si = new HashSet<>();
            Set<String> us = new HashSet<>();
            for (int i = 0; i < askers; i++) {
                (i % 2 == 0 ? si : us).addAll(all.get(i).get());
            }
            assertEquals(Set.of(estimate(body, "si").asString()), si);
            assertEquals(Set.of(estimate(body, "us").asString()), us);
            assertFalse(si.equals(us));
        } finally {
            pool.shutdownNow();
        }
    }

    private static Response estimate(String body, String units) {
        return given().contentType("application/json").body(body).post("/v1/frame-estimates?units=" + units);
    }

    @Test
    void smallRequestsAreAnsweredWhileHugeOnesAreUnderWay() throws Exception {
        StringBuilder joints = new StringBuilder();
        for (int i = 0; i < 2000; i++) {
            joints.append(i == 0 ? "" : ",")
                    .append(String.format(
                            Locale.ROOT,
                            "{\"kind\": \"tube-to-tube\", \"angle\": \"%.3f deg\","
                                    + " \"branch\": {\"outsideDiameter\": \"30 mm\", \"wall\": \"2 mm\"},"
                                    + " \"main\": {\"outsideDiameter\": \"40 mm\", \"wall\": \"2 mm\"}}",
                            40 + i * 0.01));
        }
        String huge = "{\"frame\": {\"joints\": [" + joints + "]}}";
        ExecutorService pool = Executors.newFixedThreadPool(2);
        // one that never ends its body, besides: it holds a reader, and nobody else
        try (Socket slow = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port)) {
            OutputStream out = slow.getOutputStream();
            out.write(("POST /v1/deposits HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                            + "Content-Length: 1000\r\n\r\n{\"joint\": ")
                    .getBytes(StandardCharsets.US_ASCII));
            out.flush();
            Future<Response> first = pool.submit(() -> estimate(huge, "si"));
            Future<Response> second = pool.submit(() -> estimate(huge, "us"));
            int answered = 0;
            do {
                assertEquals(
                        200,
                        given().contentType("application/json")
                                .body("{\"joint\": {\"kind\": \"plug\", \"holeDiameter\": \"6 mm\","
                                        + " \"depth\": \"2 mm\"}}")
                                .post("/v1/deposits")
                                .statusCode());
                answered++;
            } while (!first.isDone() || !second.isDone());
            assertTrue(answered >= 2, answered + " small ones were answered in the meantime");
            assertEquals(
                    2000, Document.read(first.get().asString()).path("joints").size());
            assertEquals(
                    2000, Document.read(second.get().asString()).path("joints").size());
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void aSenderWhoGoesAwayHarmsNobody() throws IOException {
        for (int i = 0; i < 20; i++) {
            try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port)) {
                socket.getOutputStream()
                        .write(("POST /v1/frame-estimates HTTP/1.1\r\nHost: localhost\r\n"
                                        + "Content-Type: application/json\r\nContent-Length: 100000\r\n\r\n{\"frame\": {")
                                .getBytes(StandardCharsets.US_ASCII));
            }
        }
        assertEquals(200, given().get("/v1/catalogue/fuels").statusCode());
    }
}
