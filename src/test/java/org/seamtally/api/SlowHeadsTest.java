package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.vertx.core.Vertx;
import io.vertx.core.http.HttpServer;
import io.vertx.ext.web.Router;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A server of the framework's kind and nothing else: where the framework runs a test, the connections' extension is not of its
 * class loader.
 */
class SlowHeadsTest {

    private static final String TIME = "quarkus.http.read-timeout";

    // by far more than the second that a head may take here
    private static final int LONGER_MS = 3_000;

    private static final String WHOLE = "GET / HTTP/1.1\r\nHost: localhost\r\n\r\n";

    private final Vertx vertx = Vertx.vertx();
    private HttpServer server;

    @BeforeEach
    void serve() throws Exception {
        System.setProperty(TIME, "1s");
        Router router = Router.router(vertx);
        router.route().order(0).handler(SlowHeads::read);
        router.route("/late")
                .order(1)
                .handler(context ->
                        vertx.setTimer(LONGER_MS, later -> context.response().end("late")));
        router.post()
                .order(2)
                .handler(context -> context.request()
                        .body()
                        .onSuccess(body -> context.response().end("of " + body.length())));
        router.route().order(3).handler(context -> context.response().end("at once"));
        server = vertx.createHttpServer()
                .requestHandler(router)
                .listen(0)
                .toCompletionStage()
                .toCompletableFuture()
                .get(30, TimeUnit.SECONDS);
    }

    @AfterEach
    void stop() throws Exception {
        System.clearProperty(TIME);
        vertx.close().toCompletionStage().toCompletableFuture().get(30, TimeUnit.SECONDS);
    }

    private Socket sending(String text) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.actualPort());
        socket.setSoTimeout(30_000);
        send(socket, text);
        return socket;
    }

    private static void send(Socket socket, String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
    }

    /** What comes next, up to some letters. */
    private static String readTo(Socket socket, String last) throws IOException {
        StringBuilder text = new StringBuilder();
        for (int letter = socket.getInputStream().read();
                letter >= 0;
                letter = socket.getInputStream().read()) {
            text.append((char) letter);
            if (text.indexOf(last) >= 0) {
                break;
            }
        }
        return text.toString();
    }

    private static void assertCut(Socket socket) throws InterruptedException {
        Frames.await("the head is given up", () -> {
            try {
                send(socket, "x");
                return false;
            } catch (IOException cut) {
                return true;
            }
        });
    }

    @Test
    void aHeadThatComesByteByByteIsCut() throws Exception {
        try (Socket slow = sending("GET / HTTP/1.1\r\nX-Padding: ")) {
            assertCut(slow);
        }
    }

    @Test
    void soIsTheNextOneOnItsConnection() throws Exception {
        try (Socket slow = sending(WHOLE)) {
            assertTrue(readTo(slow, "at once").endsWith("at once"));
            send(slow, "GET / HTTP/1.1\r\nX-Padding: ");
            assertCut(slow);
        }
    }

    @Test
    void silenceBetweenTwoRequestsIsNoHead() throws Exception {
        try (Socket silent = sending(WHOLE)) {
            assertTrue(readTo(silent, "at once").endsWith("at once"));
            Thread.sleep(LONGER_MS);
            send(silent, WHOLE);
            assertTrue(readTo(silent, "at once").endsWith("at once"));
        }
    }

    @Test
    void aBodyIsNoHead() throws Exception {
        try (Socket sender = sending("POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 4\r\n\r\n")) {
            for (int i = 0; i < 4; i++) {
                Thread.sleep(LONGER_MS / 4);
                send(sender, "x");
            }
            assertTrue(readTo(sender, "of 4").endsWith("of 4"));
        }
    }

    @Test
    void whoWaitsForAnAnswerIsNotCut() throws Exception {
        try (Socket patient = sending("GET /late HTTP/1.1\r\nHost: localhost\r\n\r\n")) {
            // the next request comes before the first is answered, and waits
            send(patient, WHOLE);
            String text = readTo(patient, "at once");
            assertEquals(2, text.split("HTTP/1.1 200", -1).length - 1, text);
        }
    }
}
