package org.seamtally.batch;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/** A body on its way in: what has been read of it goes into its digest, and who has to know hears that it goes on. */
final class UploadedBody extends FilterInputStream {

    private final MessageDigest digest;
    private final List<Runnable> pulses = new ArrayList<>();

    /** @param settings may be null */
    UploadedBody(InputStream in, BatchPlan plan, byte[] settings) {
        super(in);
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
        digest.update((plan.form() + "\n" + plan.units() + "\n").getBytes(StandardCharsets.UTF_8));
        // begins with no byte that the settings' length begins with
        plan.name().ifPresent(name -> digest.update(("name " + name + "\n").getBytes(StandardCharsets.UTF_8)));
        // the length first: what ends the settings cannot pass for what begins the body
        digest.update(ByteBuffer.allocate(Integer.BYTES)
                .putInt(settings == null ? -1 : settings.length)
                .array());
        if (settings != null) {
            digest.update(settings);
        }
    }

    /** From now on this is told of every read. */
    void whileRead(Pulse pulse) {
        pulses.add(pulse);
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        int got = in.read(into, offset, length);
        if (got > 0) {
            digest.update(into, offset, got);
        }
        pulses.forEach(Runnable::run);
        return got;
    }

    @Override
    public long skip(long n) {
        throw new UnsupportedOperationException("what is skipped would be in no digest");
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    /** Reads what is left, and ends the digest of all: SHA-256, hexadecimal. */
    String digest() throws IOException {
        byte[] scratch = new byte[NdjsonResults.BUFFER];
        while (read(scratch, 0, scratch.length) >= 0) {
            continue;
        }
        return HexFormat.of().formatHex(digest.digest());
    }
}
