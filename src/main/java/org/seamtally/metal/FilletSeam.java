package org.seamtally.metal;

import java.util.List;

/**
 * A fillet seam as far as its adequacy asks: what the geometry of the joint has found along it.
 *
 * @param leg both legs, without the gap, m, above 0
 * @param rootGap m, not below 0
 * @param wall the thinner wall, m, above 0
 * @param longestLeg longest leg that counts on the edge that the fillet ends on, m, above 0; infinite where it ends on none
 * @param face form of the face
 * @param rise convexity or concavity over face width: 0 to 0.25 convex, 0 to 0.10 concave, 0 flat
 * @param stretches the seam in parts of like angle; the shares add up to 1
 */
public record FilletSeam(
        double leg,
        double rootGap,
        double wall,
        double longestLeg,
        FaceForm face,
        double rise,
        List<Stretch> stretches) {

    /** The shares come from a numerical integral: they add up to 1 only so far. */
    private static final double SHARE_TOLERANCE = 1e-6;

    /**
     * A part of the seam.
     *
     * @param dihedral angle between the surfaces, rad, above 0, at most π
     * @param share of the seam's length, above 0, at most 1
     * @param throat least throat in it by the section's plane geometry, m; below 0 where a hollow face cuts through the root
     */
    public record Stretch(double dihedral, double share, double throat) {

        /** @throws IllegalArgumentException where the angle, the share or the throat cannot be */
        public Stretch {
            Given.positive("dihedral angle", dihedral);
            // the shares and angles are computed: the last bits may pass the end
            Given.within("dihedral angle", dihedral, 0, Math.PI + 1e-9);
            Given.positive("share of the seam", share);
            Given.within("share of the seam", share, 0, 1 + SHARE_TOLERANCE);
            if (!Double.isFinite(throat)) {
                throw new IllegalArgumentException("a throat of " + throat + " m");
            }
        }
    }

    /** @throws IllegalArgumentException where a figure cannot be or the shares do not add up to 1 */
    public FilletSeam {
        Given.positive("leg", leg);
        Given.positive("wall", wall);
        Given.within("root gap", rootGap, 0, Double.MAX_VALUE);
        Given.within("longest leg", longestLeg, Double.MIN_VALUE, Double.POSITIVE_INFINITY);
        Given.within("rise of the face", rise, 0, face.greatestRise());
        stretches = List.copyOf(stretches);
        double sum = stretches.stream().mapToDouble(Stretch::share).sum();
        if (Math.abs(sum - 1) > SHARE_TOLERANCE) {
            throw new IllegalArgumentException("the shares of the seam add up to " + sum);
        }
    }

    /**
     * The leg that is held against a rule, m: what fits the edge, less the root gap. AWS D1.1's fit-up clause lengthens the
     * leg by a gap above 1/16 in, from memory; here every gap is taken off, as it is in the throat: a decision of this
     * project.
     */
    double legThatCounts() {
        return Math.max(0, Math.min(leg, longestLeg) - rootGap);
    }

    /** Face width at an angle, m. */
    double faceWidth(double dihedral) {
        return 2 * leg * Math.sin(dihedral / 2);
    }
}
