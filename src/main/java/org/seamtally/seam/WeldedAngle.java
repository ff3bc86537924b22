package org.seamtally.seam;

/** The angles at which parts are welded together. */
final class WeldedAngle {

    /** Sharper than 20° no torch reaches the heel: a decision of this project. */
    static final double LEAST = Math.toRadians(20);
    /** The same from the other side. */
    static final double GREATEST = Math.toRadians(160);

    private WeldedAngle() {}

    /** @throws IllegalArgumentException where the angle, rad, is out of range */
    static void require(double angle) {
        if (!(angle >= LEAST && angle <= GREATEST)) {
            throw new IllegalArgumentException("an angle of " + Math.toDegrees(angle) + "° is not in 20° to 160°");
        }
    }
}
