package org.seamtally.metal;

/**
 * The shortest way from root to face of a fillet with equal legs, less what may not be counted. Convexity is not counted;
 * concavity is taken off. Below 60° the loss at the root is taken off, below 30° nothing counts (AWS D1.1, skewed T-joints,
 * from memory; it lists no loss for gas tungsten arc welding, so that of shielded metal arc welding is taken).
 */
final class EffectiveThroat {

    private static final double DEEP_LOSS = 6e-3;
    private static final double SHALLOW_LOSS = 3e-3;

    private EffectiveThroat() {}

    /**
     * @param leg the leg that counts, m
     * @param dihedral rad
     * @param hollow concavity over face width, 0 for a flat or convex face
     * @return m, not below 0
     */
    static double of(double leg, double dihedral, double hollow) {
        double half = dihedral / 2;
        double geometric = leg * Math.cos(half) - hollow * 2 * leg * Math.sin(half);
        return Math.max(0, geometric - lossAtRoot(FilletZone.degrees(dihedral)));
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
