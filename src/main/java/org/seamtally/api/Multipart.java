package org.seamtally.api;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jboss.resteasy.reactive.common.util.CaseInsensitiveMap;
import org.jboss.resteasy.reactive.server.core.multipart.MultipartParser;

/**
 * A {@code multipart/form-data} body (RFC 7578) read part by part as it arrives. The framework keeps a whole body before
 * anybody sees its parts, in memory or on disk; its parser, which is used here, takes a buffer at a time and keeps nothing.
 */
final class Multipart {

    private static final int BUFFER = 8192;

    // a browser's heads of a part are a few hundred bytes
    private static final int LONGEST_HEAD = 16 << 10;

    private final InputStream in;
    private final MultipartParser.ParseState parser;
    private final Deque<Piece> pieces = new ArrayDeque<>();
    private final byte[] buffer = new byte[BUFFER];
    private boolean inside;
    private int outside;

    /** @param boundary as the content type names it */
    Multipart(InputStream in, String boundary) {
        this.in = in;
        parser = MultipartParser.beginParse(
                new Pieces(), boundary.getBytes(StandardCharsets.ISO_8859_1), StandardCharsets.UTF_8.name());
    }

    private sealed interface Piece {

        record Begin(Part part) implements Piece {}

        record Data(byte[] bytes) implements Piece {}

        record End() implements Piece {}
    }

    /** What stands in front of a part's content; null where it does not stand there. */
    record Part(String disposition, String type, String encoding) {}

    /**
     * The next part; null after the last. What was left unread of the part before is passed over.
     *
     * @throws MalformedException where this is no such body
     */
    Part next() throws IOException {
        Piece piece = take();
        while (piece != null && !(piece instanceof Piece.Begin)) {
            piece = take();
        }
        return piece == null ? null : ((Piece.Begin) piece).part();
    }

    /** Content of the part that {@link #next} told of. */
    InputStream content() {
        return new Content(false);
    }

    /** The same; at its end nothing but the end of the body may follow. */
    InputStream lastContent() {
        return new Content(true);
    }

    /** The next piece; null after the last. */
    private Piece take() throws IOException {
        while (pieces.isEmpty()) {
            int got = in.read(buffer);
            if (got < 0 && parser.isComplete()) {
                return null;
            }
            if (got < 0) {
                throw new MalformedException("it breaks off before its closing boundary");
            }
            outside = inside ? 0 : outside + got;
            if (outside > LONGEST_HEAD) {
                throw new MalformedException(
                        "more than " + (LONGEST_HEAD >> 10) + " KiB stand before a part, or after the last");
            }
            parse(got);
        }
        return pieces.remove();
    }

    private void parse(int length) throws MalformedException {
        try {
            parser.parse(ByteBuffer.wrap(buffer, 0, length));
        } catch (IOException | RuntimeException e) {
            // the parser's own fault for a head that it cannot read is a runtime exception that has no name outside it
            throw new MalformedException("the head of a part, or its encoding, cannot be read");
        }
    }

    private final class Pieces implements MultipartParser.PartHandler {

        @Override
        public void beginPart(CaseInsensitiveMap<String> headers) {
            inside = true;
            pieces.add(new Piece.Begin(new Part(
                    headers.getFirst("Content-Disposition"),
                    headers.getFirst("Content-Type"),
                    headers.getFirst("Content-Transfer-Encoding"))));
        }

        @Override
        public void data(ByteBuffer data) {
            byte[] bytes = new byte[data.remaining()];
            data.get(bytes);
            if (bytes.length > 0) {
                pieces.add(new Piece.Data(bytes));
            }
        }

        @Override
        public void endPart() {
            inside = false;
            pieces.add(new Piece.End());
        }
    }

    private final class Content extends InputStream {

        private final boolean last;
        private byte[] bytes = new byte[0];
        private int at;
        private boolean ended;

        Content(boolean last) {
            this.last = last;
        }

        @Override
        public int read() throws IOException {
            return fill() ? bytes[at++] & 0xff : -1;
        }

        @Override
        public int read(byte[] target, int offset, int length) throws IOException {
            if (length == 0) {
                return 0;
            }
            if (!fill()) {
                return -1;
            }
            int copied = Math.min(length, bytes.length - at);
            System.arraycopy(bytes, at, target, offset, copied);
            at += copied;
            return copied;
        }

        private boolean fill() throws IOException {
            while (!ended && at == bytes.length) {
                Piece piece = take();
                if (piece instanceof Piece.Data data) {
                    bytes = data.bytes();
                    at = 0;
                } else {
                    ended = true;
                    if (last && next() != null) {
                        throw new MalformedException("a part follows the last one that is taken");
                    }
                }
            }
            return !ended;
        }
    }

    /** It is no such body, or breaks off. */
    static final class MalformedException extends IOException {

        private static final long serialVersionUID = 1;

        MalformedException(String message) {
            super(message);
        }
    }
}
