package org.seamtally.api;

import io.restassured.RestAssured;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A request whose body is sent bit by bit, in chunks, and whose answer is read meanwhile. */
final class LiveRequest implements AutoCloseable {

    // far longer than any answer here takes; a hang is to fail
    private static final int PATIENCE_MS = 60_000;

    private final Socket socket;
    private final OutputStream out;
    private final InputStream in;
    private String head;
    private InputStream body;

    LiveRequest(String method, String path, String... headers) throws IOException {
        socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port);
        socket.setSoTimeout(PATIENCE_MS);
        socket.setTcpNoDelay(true);
        out = socket.getOutputStream();
        in = new BufferedInputStream(socket.getInputStream());
        StringBuilder lines = new StringBuilder(method + " " + path + " HTTP/1.1\r\nHost: localhost\r\n");
        for (String header : headers) {
            lines.append(header).append("\r\n");
        }
        if (method.equals("POST")) {
            lines.append("Transfer-Encoding: chunked\r\n");
        }
        out.write((lines + "\r\n").getBytes(StandardCharsets.ISO_8859_1));
        out.flush();
    }

    LiveRequest send(String text) throws IOException {
        return send(text.getBytes(StandardCharsets.UTF_8));
    }

    LiveRequest send(byte[] bytes) throws IOException {
        ByteArrayOutputStream chunk = new ByteArrayOutputStream();
        chunk.writeBytes((Integer.toHexString(bytes.length) + "\r\n").getBytes(StandardCharsets.US_ASCII));
        chunk.writeBytes(bytes);
        chunk.writeBytes(new byte[] {'\r', '\n'});
        out.write(chunk.toByteArray());
        out.flush();
        return this;
    }

    /** Ends the body. */
    LiveRequest end() throws IOException {
        out.write("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
        out.flush();
        return this;
    }

    int status() throws IOException {
        return Integer.parseInt(head().split(" ")[1]);
    }

    /** A header's value; null where there is none. */
    String header(String name) throws IOException {
        for (String line : head().split("\n")) {
            if (line.toLowerCase(Locale.ROOT).startsWith(name.toLowerCase(Locale.ROOT) + ":")) {
                return line.substring(name.length() + 1).strip();
            }
        }
        return null;
    }

    private String head() throws IOException {
        if (head == null) {
            StringBuilder lines = new StringBuilder();
            for (String line = plainLine(in); !line.isEmpty(); line = plainLine(in)) {
                lines.append(line).append('\n');
            }
            head = lines.toString();
            boolean chunked = head.toLowerCase(Locale.ROOT).contains("transfer-encoding: chunked");
            body = chunked ? new Chunks() : in;
        }
        return head;
    }

    /** The next line of the answer's body, its line feed left out; null where it was ended. */
    String line() throws IOException {
        head();
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int b = body.read(); b != '\n'; b = body.read()) {
            if (b < 0) {
                return line.size() == 0 ? null : line.toString(StandardCharsets.UTF_8);
            }
            line.write(b);
        }
        return line.toString(StandardCharsets.UTF_8);
    }

    /**
     * The lines that are left.
     *
     * @throws IOException where the answer is cut
     */
    List<String> lines() throws IOException {
        List<String> all = new ArrayList<>();
        for (String line = line(); line != null; line = line()) {
            all.add(line);
        }
        return all;
    }

    /** The lines that are left of an answer that is cut; fails where it is ended. */
    List<String> linesUntilCut() {
        List<String> all = new ArrayList<>();
        try {
            for (String line = line(); line != null; line = line()) {
                all.add(line);
            }
        } catch (IOException e) {
            return all;
        }
        throw new AssertionError("the answer is ended, not cut: " + all);
    }

    /** The whole body, where it has a length. */
    String text() throws IOException {
        String length = header("Content-Length");
        return length == null
                ? new String(body.readAllBytes(), StandardCharsets.UTF_8)
                : new String(in.readNBytes(Integer.parseInt(length)), StandardCharsets.UTF_8);
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }

    private static String plainLine(InputStream from) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int b = from.read(); b != '\n'; b = from.read()) {
            if (b < 0) {
                throw new EOFException("the connection ended after: " + line);
            }
            if (b != '\r') {
                line.append((char) b);
            }
        }
        return line.toString();
    }

    /** A body sent in chunks. */
    private final class Chunks extends InputStream {

        private int left;
        private boolean ended;

        @Override
        public int read() throws IOException {
            if (left == 0 && !ended) {
                left = Integer.parseInt(plainLine(in), 16);
                ended = left == 0;
            }
            if (ended) {
                return -1;
            }
            int b = in.read();
            if (b < 0) {
                throw new EOFException("cut within a chunk");
            }
            left--;
            if (left == 0) {
                plainLine(in);
            }
            return b;
        }
    }
}
