package org.seamtally.api;

import io.restassured.RestAssured;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** A request written by hand: what no HTTP client would send. */
final class RawRequest {

    // far longer than any answer here takes; a hang is to fail
    private static final int PATIENCE_MS = 30_000;

    private RawRequest() {}

    /** What came back. */
    record Answer(String head, String body) {

        int status() {
            return Integer.parseInt(head.split(" ")[1]);
        }

        /** A header's value; null where there is none. */
        String header(String name) {
            return Arrays.stream(head.split("\r\n"))
                    .filter(line -> line.toLowerCase(java.util.Locale.ROOT)
                            .startsWith(name.toLowerCase(java.util.Locale.ROOT) + ":"))
                    .map(line -> line.substring(name.length() + 1).strip())
                    .findFirst()
                    .orElse(null);
        }
    }

    /** Sends lines, each ended as HTTP ends them, then reads until the other side closes. */
    static Answer lines(String... lines) throws IOException {
        return bytes((String.join("\r\n", lines) + "\r\n\r\n").getBytes(StandardCharsets.ISO_8859_1));
    }

    static Answer bytes(byte[] request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port)) {
            socket.setSoTimeout(PATIENCE_MS);
            OutputStream out = socket.getOutputStream();
            out.write(request);
            out.flush();
            return read(socket.getInputStream());
        }
    }

    static Answer read(InputStream in) throws IOException {
        String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        int end = text.indexOf("\r\n\r\n");
        return end < 0 ? new Answer(text, "") : new Answer(text.substring(0, end), text.substring(end + 4));
    }
}
