package org.seamtally.arc;

import java.util.OptionalDouble;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Face;
import org.seamtally.seam.Joint;
import org.seamtally.seam.Plug;
import org.seamtally.seam.TubeSleeve;
import org.seamtally.seam.TubeToTube;

/** Joints of a small frame, and how they are welded. */
final class WeldedJoints {

    static final double INCH = 25.4e-3;

    /** 6 in/min, m/s. */
    static final double HAND_SPEED = 6 * INCH / 60;

    /** 90 A at 11 V, by the melting balance. */
    static final ArcSettings ARC = new ArcSettings(90, 11, 0.70, 0.20, OptionalDouble.empty(), HAND_SPEED, 2, 0.85);

    /** Two tubes of 1.5 in × 0.095 in at 45°, leg 1/8 in, convex by 0.05. */
    static final Joint EQUAL_TUBES = new TubeToTube(
            1.5 * INCH,
            0.095 * INCH,
            1.5 * INCH,
            0.095 * INCH,
            Math.PI / 4,
            0,
            DepositSection.ofLeg(0.125 * INCH, 0, new Face(Face.Form.CONVEX, 0.05)));

    /** A sleeve of 1.5 in × 0.12 in on a tube of 1.25 in, leg 0.09 in. */
    static final Joint SLEEVE = new TubeSleeve(
            1.25 * INCH, 0.083 * INCH, 1.5 * INCH, 0.12 * INCH, DepositSection.ofLeg(0.09 * INCH, 0, Face.FLAT));

    /** A hole of 3/8 in, 0.095 in deep. */
    static final Joint HOLE = new Plug(0.375 * INCH, 0.095 * INCH);

    private WeldedJoints() {}
}
