package org.seamtally.metal;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A fillet seam as far as its adequacy asks: what the geometry of the joint has found along it.
 *
 * @param leg both legs, m, above 0
 * @param wall the thinner wall, m, above 0
 * @param edgeThickness of the plate's or sleeve's edge that the fillet ends on, m; empty where it ends on none
 * @param face form of the face
 * @param rise convexity or concavity over face width: 0 to 0.25 convex, 0 to 0.10 concave, 0 flat
 * @param stretches the seam in parts of like angle; the shares add up to 1
 */
public record FilletSeam(
        double leg, double wall, OptionalDouble edgeThickness, FaceForm face, double rise, List<Stretch> stretches) {

    /** The shares come from a numerical integral: they add up to 1 only so far. */
    private static final double SHARE_TOLERANCE = 1e-6;

    /**
     * A part of the seam.
     *
     * @param dihedral angle between the surfaces, rad, above 0, at most π
     * @param share of the seam's length, above 0, at most 1
     */
    public record Stretch(double dihedral, double share) {

        /** @throws IllegalArgumentException where the angle or the share cannot be */
        public Stretch {
            Given.positive("dihedral angle", dihedral);
            // the shares and angles are computed: the last bits may pass the end
            Given.within("dihedral angle", dihedral, 0, Math.PI + 1e-9);
            Given.positive("share of the seam", share);
            Given.within("share of the seam", share, 0, 1 + SHARE_TOLERANCE);
        }
    }

    /** @throws IllegalArgumentException where a figure cannot be or the shares do not add up to 1 */
    public FilletSeam {
        Given.positive("leg", leg);
        Given.positive("wall", wall);
        edgeThickness.ifPresent(thickness -> Given.positive("edge thickness", thickness));
        Given.within("rise of the face", rise, 0, face.greatestRise());
        stretches = List.copyOf(stretches);
        double sum = stretches.stream().mapToDouble(Stretch::share).sum();
        if (Math.abs(sum - 1) > SHARE_TOLERANCE) {
            throw new IllegalArgumentException("the shares of the seam add up to " + sum);
        }
    }

    /** Face width at an angle, m. */
    double faceWidth(double dihedral) {
        return 2 * leg * Math.sin(dihedral / 2);
    }
}
