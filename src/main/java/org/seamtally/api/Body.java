package org.seamtally.api;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** A request's body, counted while it is read: one that was sent in chunks says no length beforehand. */
final class Body extends FilterInputStream {

    /** Largest body taken, bytes: a frame of 10 000 joints with every field given is a quarter of it. */
    static final long LARGEST = 16L << 20;

    private long read;

    Body(InputStream in) {
        super(in);
    }

    /** @param in null where the request has none */
    static Body of(InputStream in) {
        return new Body(in == null ? InputStream.nullInputStream() : in);
    }

    @Override
    public int read() throws IOException {
        int value = super.read();
        if (value >= 0) {
            count(1);
        }
        return value;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int got = super.read(buffer, offset, length);
        if (got > 0) {
            count(got);
        }
        return got;
    }

    private void count(int more) throws TooLargeException {
        read += more;
        if (read > LARGEST) {
            throw new TooLargeException();
        }
    }

    /** The server's stream would read to its end first: a thread waiting on a sender who has had his answer. */
    @Override
    public void close() throws IOException {
        if (read <= LARGEST) {
            super.close();
        }
    }

    /** More was sent than is taken. */
    static final class TooLargeException extends IOException {

        private static final long serialVersionUID = 1;
    }
}
