package org.seamtally.seam;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/**
 * The deposit's section at one point of the marched seam, for the reference only: triangle of the two legs and the
 * circular cap on its face. Coordinates are in the section's plane, origin at the root, first axis along the leg on
 * the main tube, second along the main tube's outward normal.
 *
 * <p>The cap is integrated numerically from the height of its arc over the chord, not by the closed formula of the
 * circular segment: that holds its digits for the flattest cap and takes a hollow face (negative rise) by its sign.
 *
 * @param area section, in the square of the legs' unit
 * @param momentAlongMain first moment of the area about the root, along the main tube's leg
 * @param momentOffMain first moment of the area about the root, along the main tube's normal
 */
record MarchedSection(double area, double momentAlongMain, double momentOffMain) {

    /** A decision of this project: beyond this dihedral angle a fillet goes over to a groove. */
    static final double GROOVE_ANGLE = Math.toRadians(135);

    /** A decision of this project: the rise ratio that a face goes over to, at least, towards 180 degrees. */
    private static final double GROOVE_RISE = 0.10;

    // 32 nodes: at the largest rise ratio, 0.25, the arc's height is analytic inside the ellipse of parameter 2,
    // so that the rule errs by 2^-64
    private static final GaussIntegrator GAUSS = new GaussIntegratorFactory().legendre(32);

    /**
     * @param legMain leg on the main tube
     * @param legBranch leg on the branch, root gap included
     * @param rise signed rise over face width: above 0 convex, below 0 concave
     * @param dihedral angle between the two surfaces, rad, above 0 and at most pi
     * @param groove whether the rise goes over to the groove's: passed in, so that a marching step stays on one
     *     smooth formula to its end
     */
    static MarchedSection at(double legMain, double legBranch, double rise, double dihedral, boolean groove) {
        double ratio = rise;
        if (groove) {
            double w = (dihedral - GROOVE_ANGLE) / (Math.PI - GROOVE_ANGLE);
            ratio += (Math.max(rise, GROOVE_RISE) - rise) * w;
        }
        double toeAlong = legBranch * Math.cos(dihedral);
        double toeOff = legBranch * Math.sin(dihedral);
        double face = Math.hypot(legMain - toeAlong, toeOff);
        double normalAlong = toeOff / face;
        double normalOff = (legMain - toeAlong) / face;

        double triangle = legMain * toeOff / 2;
        double[] arc = arcOverChord(ratio);
        double cap = face * face * arc[0];
        double capLift = face * face * face * arc[1];
        return new MarchedSection(
                triangle + cap,
                triangle * (legMain + toeAlong) / 3 + cap * (legMain + toeAlong) / 2 + capLift * normalAlong,
                triangle * toeOff / 3 + cap * toeOff / 2 + capLift * normalOff);
    }

    /** Area, and first moment about the chord, under the arc of rise {@code k} over a chord of length 1. */
    private static double[] arcOverChord(double k) {
        double t = 2 * k; // tan(alpha/2) of the half-angle alpha
        double curvature = 4 * t / (1 + t * t);
        double cosAlpha = (1 - t * t) / (1 + t * t);
        double area = 0;
        double moment = 0;
        for (int i = 0; i < GAUSS.getNumberOfPoints(); i++) {
            double x = GAUSS.getPoint(i) / 2;
            // the arc's height, below 0 for a hollow: the metal taken off there lies below the chord, so that both
            // signs give height squared over 2 for the moment
            double height = (0.25 - x * x) * curvature / (Math.sqrt(1 - curvature * curvature * x * x) + cosAlpha);
            area += GAUSS.getWeight(i) / 2 * height;
            moment += GAUSS.getWeight(i) / 2 * height * height / 2;
        }
        return new double[] {area, moment};
    }
}
