package org.seamtally.load;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;

/** A client that takes its time: it sends a byte now and then, or nothing, or never reads what it is answered. */
final class SlowClient implements AutoCloseable {

    /** How it dawdles. */
    enum Way {
        /** Connects and says nothing. */
        SILENT,
        /** Sends a byte of its request's head now and then. */
        SLOW_HEAD,
        /** Sends a byte of a body now and then. */
        SLOW_BODY,
        /** Sends half a body, and is gone without a word. */
        HALF_BODY,
        /** Asks for something long, and never reads it. */
        NO_READER
    }

    private static final int UNREAD_BUFFER = 4096;

    private final Way way;
    private final SocketChannel channel;
    private final ByteBuffer read = ByteBuffer.allocate(1024);
    private boolean closed;

    /** @param longRequest whole, for those that never read its answer */
    SlowClient(Way way, int port, byte[] longRequest) throws IOException {
        this.way = way;
        channel = SocketChannel.open();
        if (way == Way.NO_READER) {
            channel.setOption(StandardSocketOptions.SO_RCVBUF, UNREAD_BUFFER);
        }
        channel.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
        ByteBuffer first = ByteBuffer.wrap(first(longRequest));
        while (first.hasRemaining()) {
            channel.write(first);
        }
        channel.configureBlocking(false);
    }

    private byte[] first(byte[] longRequest) {
        String head = "POST /v1/frame-estimates HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n";
        String text = switch (way) {
            case SILENT -> "";
            case SLOW_HEAD -> head + "X-Padding: ";
            case SLOW_BODY -> head + "Content-Length: 100000\r\n\r\n{";
            case HALF_BODY -> head + "Content-Length: 100000\r\n\r\n{\"frame\": {" + " ".repeat(20_000);
            case NO_READER -> head + "Content-Length: " + longRequest.length + "\r\n\r\n";
        };
        byte[] start = text.getBytes(StandardCharsets.US_ASCII);
        if (way != Way.NO_READER) {
            return start;
        }
        byte[] all = java.util.Arrays.copyOf(start, start.length + longRequest.length);
        System.arraycopy(longRequest, 0, all, start.length, longRequest.length);
        return all;
    }

    /** Sends a byte, where that is its way. */
    void dawdle() {
        if (closed) {
            return;
        }
        try {
            if (way == Way.SLOW_HEAD || way == Way.SLOW_BODY) {
                channel.write(ByteBuffer.wrap(new byte[] {' '}));
            }
        } catch (IOException e) {
            // the service has ended the connection: that is what is waited for
            closed = true;
        }
    }

    /** Whether the service is seen to have ended the connection; an answer that is never read hides it. */
    boolean isClosed() {
        if (closed || way == Way.NO_READER) {
            return closed;
        }
        try {
            read.clear();
            closed = channel.read(read) < 0;
        } catch (IOException e) {
            closed = true;
        }
        return closed;
    }

    Way way() {
        return way;
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
