package org.seamtally.batch;

import java.util.Arrays;

/** Bytes of a line or a row as far as a limit: what goes past it is counted and not held. */
final class CutBytes {

    // most lines are shorter
    private static final int USUAL = 8 * 1024;

    private final int most;
    private byte[] held = new byte[USUAL];
    private long length;

    /** @param most bytes that are held */
    CutBytes(int most) {
        this.most = most;
    }

    void clear() {
        length = 0;
        if (held.length > 8 * USUAL) {
            // a rare long line shall not be paid for to the end
            held = new byte[USUAL];
        }
    }

    void add(byte[] from, int start, int count) {
        if (length + count <= most) {
            int used = (int) length;
            if (used + count > held.length) {
                held = Arrays.copyOf(held, Math.min(most, Math.max(2 * held.length, used + count)));
            }
            System.arraycopy(from, start, held, used, count);
        }
        length += count;
    }

    void add(int value) {
        if (length < most) {
            if (length == held.length) {
                held = Arrays.copyOf(held, Math.min(most, 2 * held.length));
            }
            held[(int) length] = (byte) value;
        }
        length++;
    }

    /** All that were added. */
    long length() {
        return length;
    }

    /** Whether more were added than are held. */
    boolean isCut() {
        return length > most;
    }

    int at(int index) {
        return held[index] & 0xff;
    }

    byte[] first(int count) {
        return Arrays.copyOf(held, count);
    }
}
