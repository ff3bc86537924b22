package org.seamtally.api;

import java.io.Flushable;
import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/**
 * The body of a request that is read line by line. It has no largest size: whoever reads it bounds a line. A line has a
 * limit in time instead, so that a sender who dawdles holds no thread; the time that the service takes itself does not count.
 */
final class StreamBody extends InputStream {

    /** Longest that a line may take to arrive: the longest line, 1 MiB, over a line of 70 kbit/s. */
    static final Duration LONGEST_WAIT = Duration.ofMinutes(2);

    private final InputStream in;
    private final InstantSource clock;
    private Flushable answer = () -> {};
    private Duration waited = Duration.ZERO;
    private boolean ended;

    StreamBody(InputStream in, InstantSource clock) {
        this.in = in == null ? InputStream.nullInputStream() : in;
        this.clock = clock;
    }

    /** From now on what was answered is sent out before the sender is waited for: he may be waiting for it. */
    void answeringOn(Flushable flushed) {
        answer = flushed;
    }

    /** Whether the sender has ended it: if not, more is to come, or he is gone. */
    boolean ended() {
        return ended;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        answer.flush();
        Instant before = clock.instant();
        int got;
        try {
            got = in.read(buffer, offset, length);
        } catch (IOException e) {
            throw new BrokenOffException(e);
        }
        if (got < 0) {
            ended = true;
            return got;
        }
        waited = waited.plus(Duration.between(before, clock.instant()));
        if (waited.compareTo(LONGEST_WAIT) > 0) {
            throw new TooSlowException();
        }
        if (holdsLineEnd(buffer, offset, got)) {
            waited = Duration.ZERO;
        }
        return got;
    }

    private static boolean holdsLineEnd(byte[] buffer, int offset, int length) {
        for (int i = offset; i < offset + length; i++) {
            if (buffer[i] == '\n' || buffer[i] == '\r') {
                return true;
            }
        }
        return false;
    }

    /**
     * Nothing, ever: readers that ask whether there is more before they hand on what they have would else wait for a sender
     * who waits for them. The server's stream tells the whole length that was declared.
     */
    @Override
    public int available() {
        return 0;
    }

    /** Left open: the server's stream would read to its end first, a thread waiting on a sender who has had his answer. */
    @Override
    public void close() {}

    /** The sender went away, or sent nothing for as long as the server waits. */
    static final class BrokenOffException extends IOException {

        private static final long serialVersionUID = 1;

        BrokenOffException(IOException cause) {
            super(cause);
        }
    }

    /** A line took too long to arrive. */
    static final class TooSlowException extends IOException {

        private static final long serialVersionUID = 1;
    }
}
