package org.seamtally.load;

import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.GZIPInputStream;

/**
 * HTTP/1.1 to this machine, byte by byte as it is given: an HTTP client would mend, or refuse to send, what a service must
 * be able to take. One answer at a time; the connection is used again where the service keeps it.
 */
final class RawConnection implements AutoCloseable {

    private static final int MOST_HEAD = 1 << 16;

    private final int port;
    private final Duration patience;
    private Socket socket;
    private InputStream in;
    private long deadline;

    /**
     * An answer.
     *
     * @param headers by name in small letters
     */
    record Answer(int status, Map<String, String> headers, byte[] body) {

        String header(String name) {
            return headers.getOrDefault(name, "");
        }

        String text() {
            return new String(body, StandardCharsets.UTF_8);
        }
    }

    /** The service said nothing, or did not come to an end, as long as it was waited for. */
    static final class NoAnswerException extends IOException {

        private static final long serialVersionUID = 1;

        NoAnswerException(String message, Throwable cause) {
            super(message, cause);
        }
    }

    /** @param patience for one whole answer */
    RawConnection(int port, Duration patience) {
        this.port = port;
        this.patience = patience;
    }

    /**
     * Sends a request and reads its answer.
     *
     * @param answerHasBody false where the method is HEAD
     */
    Answer exchange(byte[] request, boolean answerHasBody) throws IOException {
        deadline = System.nanoTime() + patience.toNanos();
        boolean kept = socket != null;
        try {
            return once(request, answerHasBody);
        } catch (ClosedBeforeAnswerException e) {
            close();
            if (kept) {
                // a connection that was kept may be closed by the service at any moment between two requests
                return exchange(request, answerHasBody);
            }
            throw new NoAnswerException("the connection was closed without an answer", e);
        } catch (SocketTimeoutException e) {
            close();
            throw new NoAnswerException("no whole answer within " + patience.toSeconds() + " s", e);
        }
    }

    private Answer once(byte[] request, boolean answerHasBody) throws IOException {
        if (socket == null) {
            socket = new Socket();
            socket.setTcpNoDelay(true);
            socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), (int) patience.toMillis());
            in = new BufferedInputStream(socket.getInputStream(), 1 << 14);
        }
        try {
            socket.getOutputStream().write(request);
        } catch (IOException e) {
            // a service that has had enough of it may have answered already
        }
        Answer answer = read(answerHasBody);
        if (answer.header("connection").equalsIgnoreCase("close")) {
            close();
        }
        return answer;
    }

    private Answer read(boolean answerHasBody) throws IOException {
        int status;
        Map<String, String> headers;
        do {
            String[] first = statusLine().split(" ", 3);
            if (first.length < 2 || !first[0].startsWith("HTTP/1.")) {
                throw new IOException("no status line: " + String.join(" ", first));
            }
            status = Integer.parseInt(first[1]);
            headers = headers();
        } while (status / 100 == 1);
        Answer head = new Answer(status, headers, new byte[0]);
        if (!answerHasBody || status == 204 || status == 304) {
            return head;
        }
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        if (head.header("transfer-encoding").equalsIgnoreCase("chunked")) {
            for (int size = chunkSize(); size > 0; size = chunkSize()) {
                copy(body, size);
                line();
            }
            headers();
        } else if (headers.containsKey("content-length")) {
            copy(body, Integer.parseInt(head.header("content-length")));
        } else {
            for (int value = next(); value >= 0; value = next()) {
                body.write(value);
            }
            close();
        }
        byte[] bytes = body.toByteArray();
        if (head.header("content-encoding").equals("gzip")) {
            bytes = new GZIPInputStream(new ByteArrayInputStream(bytes)).readAllBytes();
        }
        return new Answer(status, headers, bytes);
    }

    private String statusLine() throws IOException {
        int first;
        try {
            first = next();
        } catch (SocketTimeoutException e) {
            throw e;
        } catch (IOException e) {
            throw new ClosedBeforeAnswerException();
        }
        if (first < 0) {
            throw new ClosedBeforeAnswerException();
        }
        return (char) first + line();
    }

    private Map<String, String> headers() throws IOException {
        Map<String, String> headers = new TreeMap<>();
        for (String line = line(); !line.isEmpty(); line = line()) {
            int colon = line.indexOf(':');
            if (colon < 1) {
                throw new IOException("no header: " + line);
            }
            headers.put(
                    line.substring(0, colon).toLowerCase(Locale.ROOT),
                    line.substring(colon + 1).strip());
        }
        return headers;
    }

    private int chunkSize() throws IOException {
        return Integer.parseInt(line().strip(), 16);
    }

    private String line() throws IOException {
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        for (int value = next(); value != '\n'; value = next()) {
            if (value < 0 || line.size() > MOST_HEAD) {
                throw new EOFException("the answer breaks off");
            }
            if (value != '\r') {
                line.write(value);
            }
        }
        return line.toString(StandardCharsets.ISO_8859_1);
    }

    private void copy(ByteArrayOutputStream body, int length) throws IOException {
        byte[] piece = new byte[1 << 13];
        for (int left = length; left > 0; ) {
            await();
            int got = in.read(piece, 0, Math.min(piece.length, left));
            if (got < 0) {
                throw new EOFException("the answer breaks off");
            }
            body.write(piece, 0, got);
            left -= got;
        }
    }

    private int next() throws IOException {
        if (in.available() == 0) {
            await();
        }
        return in.read();
    }

    /** Time that is left is for the whole answer, not for each byte of it. */
    private void await() throws IOException {
        long left = (deadline - System.nanoTime()) / 1_000_000;
        if (left <= 0) {
            throw new SocketTimeoutException("out of patience");
        }
        socket.setSoTimeout((int) left);
    }

    @Override
    public void close() throws IOException {
        if (socket != null) {
            socket.close();
            socket = null;
        }
    }

    /** Not a byte came. */
    private static final class ClosedBeforeAnswerException extends IOException {

        private static final long serialVersionUID = 1;
    }
}
