package org.seamtally.seam;

/**
 * What the integrals need of the root line at one place. Derivatives are by the stretch's own parameter.
 *
 * <p>At each place stand three directions square to one another: the seam's tangent T, the leg direction a in the main
 * member's surface (away from the branch), and the main member's outward normal n. The branch's leg direction is
 * {@code b = a cos ψ + n sin ψ}, with ψ the dihedral angle.
 *
 * @param speed length per parameter, m, positive
 * @param cosDihedral cosine of the dihedral angle between the two surfaces
 * @param sinDihedral its sine, 0 to 1
 * @param dihedralDrift derivative of the cosine
 * @param turnInMain a·dT: how fast the seam turns within the main member's surface
 * @param turnOffMain n·dT: how fast the seam turns with that surface
 */
record Station(
        double speed,
        double cosDihedral,
        double sinDihedral,
        double dihedralDrift,
        double turnInMain,
        double turnOffMain) {

    /** The dihedral angle, rad, 0 to π. */
    double dihedral() {
        return Math.atan2(sinDihedral, cosDihedral);
    }
}
