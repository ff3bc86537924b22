package org.seamtally.arc;

/**
 * Filler used.
 *
 * @param mass deposited, kg
 * @param consumed bought for it: with stubs and spatter, kg
 * @param rods a real number of rods; whole ones are counted once, for an order
 */
public record FillerUse(double mass, double consumed, double rods) {

    /** No filler. */
    public static final FillerUse NONE = new FillerUse(0, 0, 0);

    /** Both together. */
    public FillerUse plus(FillerUse other) {
        return new FillerUse(mass + other.mass, consumed + other.consumed, rods + other.rods);
    }

    /** So many times this. */
    public FillerUse times(double count) {
        return new FillerUse(mass * count, consumed * count, rods * count);
    }
}
