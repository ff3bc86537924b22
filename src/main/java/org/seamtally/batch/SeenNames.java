package org.seamtally.batch;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * Frame names that have been met. Of each 64 bits of its SHA-256 are kept, nothing else: 200 000 names take 2 MB. That two
 * of so many names share their bits has a chance of one in a thousand million; the later one would then be refused though
 * it is new, and another name would cure it.
 */
final class SeenNames {

    private static final int FIRST_CAPACITY = 1024;

    /**
     * Where the first is too small: 2 MB at once, so that what a long file takes does not grow before its 220 000th frame, and
     * no second table stands beside the first then.
     */
    private static final int LONG_FILE = 1 << 18;

    private final MessageDigest digest;
    // a power of two; 0 is a free place
    private long[] places = new long[FIRST_CAPACITY];
    private int met;

    SeenNames() {
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** Notes a name; false where it has been met before. */
    boolean add(String name) {
        long bits = ByteBuffer.wrap(digest.digest(name.getBytes(StandardCharsets.UTF_8)))
                .getLong();
        if (!put(bits == 0 ? 1 : bits)) {
            return false;
        }
        met++;
        // probes stay short up to this share
        if (met > places.length * 0.85) {
            grow();
        }
        return true;
    }

    private boolean put(long bits) {
        int place = (int) bits & places.length - 1;
        while (places[place] != 0) {
            if (places[place] == bits) {
                return false;
            }
            place = place + 1 & places.length - 1;
        }
        places[place] = bits;
        return true;
    }

    private void grow() {
        long[] old = places;
        places = new long[Math.max(LONG_FILE, 2 * old.length)];
        for (long bits : old) {
            if (bits != 0) {
                put(bits);
            }
        }
    }
}
