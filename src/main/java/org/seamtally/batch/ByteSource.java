package org.seamtally.batch;

import java.io.IOException;
import java.io.InputStream;
import org.seamtally.wire.RefusedException;

/** The bytes of a job file, one by one, its byte order mark passed over. Waits for no more than it needs. */
final class ByteSource {

    // a page or two of a file system, or of what a socket hands out at once
    private static final int BUFFER = 16 * 1024;

    private final InputStream in;
    private final byte[] buffer = new byte[BUFFER];
    private int at;
    private int end;

    /**
     * Looks at the first bytes.
     *
     * @throws RefusedException where the file is of another sort
     */
    ByteSource(InputStream in) throws IOException, RefusedException {
        this.in = in;
        while (end < FirstBytes.LOOKED_AT) {
            int got = in.read(buffer, end, buffer.length - end);
            if (got < 0) {
                break;
            }
            end += got;
        }
        FirstBytes.check(buffer, Math.min(end, FirstBytes.LOOKED_AT));
        if (end >= 3 && (buffer[0] & 0xff) == 0xef && (buffer[1] & 0xff) == 0xbb && (buffer[2] & 0xff) == 0xbf) {
            at = 3;
        }
    }

    /** The next byte, 0 to 255; -1 after the last. */
    int next() throws IOException {
        return isMore() ? buffer[at++] & 0xff : -1;
    }

    /** The next byte, which stays the next; -1 after the last. */
    int peek() throws IOException {
        return isMore() ? buffer[at] & 0xff : -1;
    }

    /**
     * Moves bytes into a line, up to a line feed or the end of what has been fetched.
     *
     * @return whether the line feed was reached; it is not part of the line, and is passed
     */
    boolean takeLine(CutBytes line) {
        int start = at;
        while (at < end && buffer[at] != '\n') {
            at++;
        }
        line.add(buffer, start, at - start);
        if (at == end) {
            return false;
        }
        at++;
        return true;
    }

    /** Whether there is another byte; waits for it. */
    boolean isMore() throws IOException {
        while (at == end) {
            at = 0;
            end = 0;
            int got = in.read(buffer, 0, buffer.length);
            if (got < 0) {
                return false;
            }
            end = got;
        }
        return true;
    }
}
