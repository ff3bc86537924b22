package org.seamtally.frame;

import java.util.ArrayList;
import java.util.List;
import org.seamtally.metal.FaceForm;
import org.seamtally.metal.FilletAdequacy;
import org.seamtally.metal.FilletSeam;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Joint;
import org.seamtally.seam.Seam;
import org.seamtally.seam.SeamIntegral;

/**
 * Holds a joint's fillet against the code's rule, zone by zone along the real seam. The widest angle stands for a zone. The
 * throat rises to at most one peak as the angle opens, so that it is least at one of the zone's two ends: without a gap at
 * the wide one, beside a gap it may be the narrow one.
 */
final class FilletAlongSeam {

    /** Angles where a rule changes, degrees; the first ones belong to the zone above them, the others to that below. */
    private static final double[] LIMITS = {30, 45, 60, 100, 110, 120, 135};

    /** How many of the limits belong to the zone above them. */
    private static final int BELONG_ABOVE = 3;

    private static final double[] RADIANS =
            java.util.Arrays.stream(LIMITS).map(Math::toRadians).toArray();

    /** Below a limit that does not belong to the zone, rad: more than the last bits and nothing in the throat. */
    private static final double HAIR = 1e-8;

    /**
     * A zone with less of the seam than this is an angle that lies on a limit to the last bits: where it turns back at the
     * limit, as at the heel of a joint at 30° sharp, the share goes with the root of them.
     */
    private static final double NO_SHARE = 1e-7;

    private FilletAlongSeam() {}

    /** A joint's seam added up with its zones. */
    static SeamIntegral.ByZones measure(Joint joint) {
        return SeamIntegral.byZones(joint.curve().orElseThrow(), joint.section().orElseThrow(), RADIANS);
    }

    /**
     * @param joint one with a root line
     * @param measured its seam
     */
    static FilletAdequacy check(Joint joint, SeamIntegral.ByZones measured) {
        DepositSection section = joint.section().orElseThrow();
        return FilletAdequacy.of(new FilletSeam(
                Math.min(section.legMain(), section.legBranch()),
                section.rootGap(),
                joint.thinnerWall(),
                DepositSection.longestLeg(joint.edge()),
                FaceForm.valueOf(section.face().form().name()),
                section.face().rise(),
                stretches(measured, section.within(joint.edge()))));
    }

    private static List<FilletSeam.Stretch> stretches(SeamIntegral.ByZones measured, DepositSection section) {
        Seam.Course course = measured.seam().course().orElseThrow();
        double least = course.leastDihedral();
        double greatest = course.greatestDihedral();
        // one angle all along, which may lie on a limit
        if (greatest - least <= HAIR) {
            return List.of(stretch(section, least, greatest, 1));
        }
        List<Double> shares = measured.shares();
        List<FilletSeam.Stretch> stretches = new ArrayList<>();
        for (int i = 0; i < shares.size(); i++) {
            if (shares.get(i) > NO_SHARE) {
                stretches.add(
                        stretch(section, Math.max(narrowest(i), least), Math.min(widest(i), greatest), shares.get(i)));
            }
        }
        return stretches;
    }

    private static FilletSeam.Stretch stretch(DepositSection section, double narrow, double wide, double share) {
        double throat = Math.min(section.effectiveThroat(narrow), section.effectiveThroat(wide));
        return new FilletSeam.Stretch(wide, share, throat);
    }

    /** The narrowest angle of a zone, rad. */
    private static double narrowest(int zone) {
        return zone == 0 ? 0 : RADIANS[zone - 1];
    }

    /** The widest angle that belongs to a zone, rad. */
    private static double widest(int zone) {
        if (zone == RADIANS.length) {
            return Math.PI;
        }
        return zone < BELONG_ABOVE ? RADIANS[zone] - HAIR : RADIANS[zone];
    }
}
