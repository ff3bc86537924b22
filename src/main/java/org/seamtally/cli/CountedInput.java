package org.seamtally.cli;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** Counts what was read of a file. */
final class CountedInput extends FilterInputStream {

    private volatile long bytes;

    CountedInput(InputStream in) {
        super(in);
    }

    long bytes() {
        return bytes;
    }

    @Override
    public int read() throws IOException {
        int b = super.read();
        count(b < 0 ? 0 : 1);
        return b;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        int read = super.read(into, offset, length);
        count(Math.max(0, read));
        return read;
    }

    @Override
    public long skip(long n) throws IOException {
        long skipped = super.skip(n);
        count(skipped);
        return skipped;
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    private void count(long more) {
        // one thread reads; any may ask
        bytes = bytes + more;
    }
}
