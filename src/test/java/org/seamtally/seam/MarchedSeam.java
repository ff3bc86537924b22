package org.seamtally.seam;

/**
 * A reference for the weld line of two round tubes, to test the seam against: no formula and no code is shared with
 * what it tests. The curve is marched along the cross product of the gradients of the two cylinders' implicit
 * equations by an adaptive integrator of order 8 (Hipparchus, Dormand–Prince 8(5,3)), and the length, the deposit
 * volume ∮A ds − ∮M·dT (Pappus, for a root line that is not straight) and the stretch beyond 135 degrees are summed
 * on the way.
 *
 * <p>Where the branch touches the main tube's side the seam has a corner. The volume there is the limit that ever
 * smaller gaps tend to: the tangent turns by the angle between the two tangents about the common normal, the moment
 * turning with it.
 *
 * <p>Sums are good to some 10⁻¹³ of themselves, whatever the gap. Length and volume near their limit as the root of the
 * gap: one unit in the last place of r + e beside R is worth 10⁻⁸, so that a touching branch is to be asked for in
 * numbers that a double holds.
 *
 * @param length of the root line, in the unit given
 * @param volume of the deposit, in the cube of the unit given
 * @param grooveShare share of the length whose dihedral angle is above 135 degrees
 * @param leastDihedral least angle between the outer surfaces along the seam, rad
 * @param greatestDihedral greatest angle, rad; pi where the branch touches the main tube's side
 * @param drift the most that the march was found off the two implicit equations, of unit size each, before it was put
 *     back
 */
record MarchedSeam(
        double length, double volume, double grooveShare, double leastDihedral, double greatestDihedral, double drift) {

    /** A decision of this project: a branch that overhangs by no more than this share of the main radius is equal. */
    private static final double COUNTS_AS_EQUAL = 1e-9;

    /**
     * @param r outside radius of the branch
     * @param mainRadius outside radius of the main tube
     * @param theta angle between the axes, rad, above 0 and below pi
     * @param e offset between the axes
     * @param legMain leg on the main tube's surface
     * @param legBranch leg on the branch's surface, root gap not included
     * @param rootGap lengthens the branch's leg
     * @param rise signed rise of the face over its width: convex above 0, up to 0.25; concave below, to −0.10
     * @throws IllegalArgumentException for what cannot be welded so
     */
    static MarchedSeam march(
            double r,
            double mainRadius,
            double theta,
            double e,
            double legMain,
            double legBranch,
            double rootGap,
            double rise) {
        require(r > 0 && mainRadius > 0, "radii must be above 0");
        require(theta > 0 && theta < Math.PI, "the angle must lie between 0 and pi");
        require(Math.abs(e) + r <= mainRadius * (1 + COUNTS_AS_EQUAL), "the branch overhangs the main tube");
        require(legMain > 0 && legBranch > 0 && rootGap >= 0, "legs must be above 0, the root gap not below");
        require(rise >= -0.10 && rise <= 0.25, "the rise must lie between -0.10 and 0.25");

        double length = 0;
        double volume = 0;
        double groove = 0;
        double least = Math.PI;
        double greatest = 0;
        double drift = 0;
        for (double offset : new double[] {e, -e}) {
            // R − r first: it is exact where the two are near each other
            double gap = Math.max(0, ((mainRadius - r) - offset) / r);
            MarchedQuarter.Sum[] quarters = new MarchedQuarter.Sum[2];
            for (int i = 0; i < 2; i++) {
                quarters[i] = new MarchedQuarter(
                                mainRadius / r, gap, theta, i == 0, legMain / r, (legBranch + rootGap) / r, rise)
                        .march();
                length += quarters[i].length();
                volume += quarters[i].volume();
                groove += quarters[i].grooveLength();
                least = Math.min(least, quarters[i].least());
                greatest = Math.max(greatest, quarters[i].greatest());
                drift = Math.max(drift, quarters[i].drift());
            }
            if (gap == 0) {
                volume -= cornerMoment(quarters[0], quarters[1]);
            }
        }
        return new MarchedSeam(length * r, volume * r * r * r, groove / length, least, greatest, drift);
    }

    /**
     * The corner's share of ∮M·dT: in the limit the tangent turns through every direction between the two, in the
     * plane square to the common normal, and M keeps its size and its place beside it, so that the integral is M's
     * part in that plane times the angle. (The mean of both moments times the difference of both tangents would give
     * the sine of the angle instead: 1 for π/2 at equal tubes. Both vanish where the branch's leg with the gap is as
     * long as the main tube's.)
     */
    private static double cornerMoment(MarchedQuarter.Sum heel, MarchedQuarter.Sum toe) {
        double angle = Math.PI - heel.inward().angleTo(toe.inward());
        MarchedVector chord = heel.inward().plus(toe.inward());
        double outward = heel.saddleMoment().plus(toe.saddleMoment()).dot(chord);
        double size = Math.hypot(heel.saddleMoment().x(), heel.saddleMoment().z());
        return Math.signum(outward) * size * angle;
    }

    private static void require(boolean holds, String message) {
        if (!holds) {
            throw new IllegalArgumentException(message);
        }
    }
}
