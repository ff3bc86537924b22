package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Who sends a body and does not get on with it holds a socket, and nothing of what others need. */
@QuarkusTest
@TestProfile(SlowSenderTest.FewThreads.class)
class SlowSenderTest {

    // each of them would have one, and there would be none left
    private static final int THREADS = 4;
    private static final int SENDERS = 3 * THREADS;

    public static final class FewThreads implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "quarkus.thread-pool.max-threads", Integer.toString(THREADS), "quarkus.http.read-timeout", "4s");
        }
    }

    private static final String HEAD = "POST /v1/frame-estimates HTTP/1.1\r\nHost: localhost\r\n"
            + "Content-Type: application/json\r\nContent-Length: 100000\r\n";

    @Inject
    WholeBodies bodies;

    private static Socket sending(String text) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port);
        socket.setSoTimeout(30_000);
        socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
        return socket;
    }

    @Test
    void othersAreAnsweredMeanwhileAndTheSlowAreToldAndCut() throws Exception {
        List<Socket> senders = new ArrayList<>();
        try {
            for (int i = 0; i < SENDERS; i++) {
                senders.add(sending(HEAD + "\r\n{"));
            }
            Frames.await("all have begun", () -> bodies.arrived() == SENDERS);
            assertEquals(
                    200,
                    Frames.request("application/json")
                            .body(Frames.frame(1).getBytes(StandardCharsets.UTF_8))
                            .post("/v1/frame-estimates")
                            .statusCode());
            for (Socket sender : senders) {
                RawRequest.Answer answer = RawRequest.read(sender.getInputStream());
                assertEquals(408, answer.status(), answer::head);
                assertEquals("application/problem+json", answer.header("Content-Type"));
                assertEquals(
                        "/problems/too-slow",
                        Document.read(answer.body()).path("type").asText());
            }
        } finally {
            for (Socket sender : senders) {
                sender.close();
            }
        }
        assertEquals(0, bodies.arrived());
    }

    @Test
    void whoGoesAwayLeavesNothing() throws Exception {
        try (Socket sender = sending(HEAD + "\r\n{\"frame\"")) {
            Frames.await("it has begun", () -> bodies.arrived() > 0);
        }
        Frames.await("it is forgotten", () -> bodies.arrived() == 0);
    }

    @Test
    void whoAsksBeforeHeSendsIsTold() throws Exception {
        String body = Frames.frame(1);
        try (Socket sender = sending("POST /v1/frame-estimates HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                + "Content-Type: application/json\r\nExpect: 100-continue\r\nContent-Length: " + body.length()
                + "\r\n\r\n")) {
            byte[] told = sender.getInputStream().readNBytes("HTTP/1.1 100 Continue\r\n\r\n".length());
            assertTrue(new String(told, StandardCharsets.US_ASCII).startsWith("HTTP/1.1 100"));
            sender.getOutputStream().write(body.getBytes(StandardCharsets.US_ASCII));
            assertEquals(200, RawRequest.read(sender.getInputStream()).status());
        }
    }
}
