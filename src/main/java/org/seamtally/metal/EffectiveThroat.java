package org.seamtally.metal;

/**
 * The throat of a fillet's section less what may not be counted of it: below 60° the loss at the root is taken off, below
 * 30° nothing counts (AWS D1.1, skewed T-joints, from memory; it lists no loss for gas tungsten arc welding, so that of
 * shielded metal arc welding is taken).
 */
final class EffectiveThroat {

    private static final double DEEP_LOSS = 6e-3;
    private static final double SHALLOW_LOSS = 3e-3;

    private EffectiveThroat() {}

    /** Throat that counts on a stretch, m, not below 0. */
    static double of(FilletSeam.Stretch stretch) {
        return Math.max(0, stretch.throat() - lossAtRoot(FilletZone.degrees(stretch.dihedral())));
    }

    private static double lossAtRoot(double degrees) {
        if (degrees >= 60) {
            return 0;
        }
        if (degrees >= 45) {
            return SHALLOW_LOSS;
        }
        return degrees >= 30 ? DEEP_LOSS : Double.POSITIVE_INFINITY;
    }
}
