package org.seamtally.gas;

/** The guards that constructors of this room share. */
final class Refuse {

    private Refuse() {}

    /** @throws IllegalArgumentException unless the value is finite and above 0 */
    static void unlessPositive(double value, String what) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be a finite number above 0, not " + value);
        }
    }

    /** @throws IllegalArgumentException unless the value is finite and not negative */
    static void unlessNotNegative(double value, String what) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be a finite number of at least 0, not " + value);
        }
    }

    /** @throws IllegalArgumentException where the count is negative */
    static void unlessCount(long count, String what) {
        if (count < 0) {
            throw new IllegalArgumentException(what + " must be at least 0, not " + count);
        }
    }
}
