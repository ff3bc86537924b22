package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The dihedral angle between the outer surfaces: 90° + asin β at a square joint's saddle, θ at the heel and 180° − θ at
 * the toe (analytic geometry); the share of the seam past a limit, against points counted round the branch.
 */
class PublishedDihedralTest {

    private static final long SEED = 135;
    private static final DepositSection FILLET = DepositSection.ofLeg(3e-3, 0, Face.FLAT);

    /** 90° + asin β; at β = 1 the surfaces touch. */
    @ParameterizedTest(name = "diameters in the ratio {0}: {1}°")
    @CsvSource({".5, 120", ".6666666666666666, 131.810", ".8, 143.130", "1, 180"})
    void aSquareJointIsWidestAtTheSaddle(double beta, double degrees) {
        Seam.Course course = course(beta, 90, 0);
        assertEquals(degrees, Math.toDegrees(course.greatestDihedral()), 5.1e-4);
        assertEquals(90, Math.toDegrees(course.leastDihedral()), 1e-9);
    }

    /** The heel is the narrowest place of a slanting branch, whichever way it leans. */
    @ParameterizedTest(name = "{0}°, diameters in the ratio {1}")
    @CsvSource({"45, .5", "135, .5", "30, 1", "60, .95", "160, .8"})
    void theHeelIsAsNarrowAsTheAxesCross(double degrees, double beta) {
        assertEquals(
                Math.min(degrees, 180 - degrees),
                Math.toDegrees(course(beta, degrees, 0).leastDihedral()),
                1e-6);
    }

    /** A steep branch on a plate: heel θ, toe 180° − θ. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 45, 60, 90, 100, 160})
    void aTubeOnAPlateRunsFromHeelToToe(double degrees) {
        Seam.Course course = new TubeToPlate(38.1e-3, 2e-3, 6e-3, Math.toRadians(degrees), FILLET)
                .seam()
                .course()
                .orElseThrow();
        assertEquals(Math.min(degrees, 180 - degrees), Math.toDegrees(course.leastDihedral()), 1e-6);
        assertEquals(Math.max(degrees, 180 - degrees), Math.toDegrees(course.greatestDihedral()), 1e-6);
    }

    /** A thin branch sees a plane at its toe too. */
    @Test
    void aThinBranchsToe() {
        assertEquals(120, Math.toDegrees(course(0.001, 60, 0).greatestDihedral()), 0.01);
        assertEquals(120, Math.toDegrees(course(0.001, 120, 0).greatestDihedral()), 0.01);
    }

    /** 90° + asin β passes 135° at β = sin 45°. */
    @Test
    void aSquareJointHasAGrooveFromSineOf45() {
        assertEquals(0, course(Math.sin(Math.PI / 4) - 1e-6, 90, 0).grooveShare());
        double share = course(Math.sin(Math.PI / 4) + 1e-6, 90, 0).grooveShare();
        assertTrue(share > 0 && share < 0.01, "share " + share);
    }

    /** 59 % of a joint of equal tubes at 45° is wider than 135°: by counting points, see below. */
    @Test
    void mostOfAFortyFiveDegreeJointOfOneSizeIsAGroove() {
        assertEquals(0.59, course(1, 45, 0).grooveShare(), 0.005);
    }

    record Lay(double beta, double degrees, double offset, double limit) {}

    static Stream<Lay> sweep() {
        SplittableRandom random = new SplittableRandom(SEED);
        return Stream.generate(() -> {
                    double beta = random.nextDouble(0.2, 0.97);
                    double offset = random.nextBoolean() ? 0 : (0.98 - beta) * random.nextDouble(-1, 1);
                    return new Lay(beta, random.nextDouble(20, 160), offset, random.nextDouble(60, 150));
                })
                .limit(60);
    }

    @Test
    void theShareWiderThanALimitAgreesWithPointsCounted() {
        Sweep.each(SEED, sweep(), this::theShareWiderThanALimitAgreesWithPointsCounted);
    }

    private void theShareWiderThanALimitAgreesWithPointsCounted(Lay lay) {
        RootLine line = new TwoTubes(lay.beta, 1, Math.toRadians(lay.degrees), lay.offset);
        double limit = Math.toRadians(lay.limit);
        assertEquals(counted(lay, limit), shareWiderThan(line, FILLET, limit), 4e-4);
        Seam.Course course = course(lay.beta, lay.degrees, lay.offset);
        assertEquals(counted(lay, Math.toRadians(135)), course.grooveShare(), 4e-4);
    }

    /** A sleeve's end and a square tube on a plate are at 90° all round. */
    @Test
    void whereTheAngleStaysTheShareIsAllOrNothing() {
        RootLine circle = new TubeOnPlane(19e-3, Math.PI / 2);
        assertEquals(1, shareWiderThan(circle, FILLET, Math.toRadians(89.9)), 1e-12);
        assertEquals(0, shareWiderThan(circle, FILLET, Math.toRadians(90.1)));
        RootLine straight = new StraightLine(0.1, Math.toRadians(120));
        assertEquals(1, shareWiderThan(straight, FILLET, Math.toRadians(119.9)), 1e-12);
        assertEquals(0, shareWiderThan(straight, FILLET, Math.toRadians(120.1)));
    }

    /** On a plate at 60°, wider than 90° is the toe's half: cut square to the plane of the axis, half the ellipse. */
    @Test
    void halfOfASlantingTubesSeamIsWiderThanARightAngle() {
        RootLine ellipse = new TubeOnPlane(19e-3, Math.toRadians(60));
        assertEquals(0.5, shareWiderThan(ellipse, FILLET, Math.PI / 2), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 180, 181, Double.NaN})
    void linesThatDoNotExistAreRefused(double degrees) {
        double angle = Math.toRadians(degrees);
        assertThrows(IllegalArgumentException.class, () -> new TwoTubes(1, 2, angle, 0));
        assertThrows(IllegalArgumentException.class, () -> new TubeOnPlane(1, angle));
        assertThrows(IllegalArgumentException.class, () -> new StraightLine(1, angle));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN})
    void linesOfNoSizeAreRefused(double size) {
        assertThrows(IllegalArgumentException.class, () -> new TwoTubes(size, 2, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> new TubeOnPlane(size, 1));
        assertThrows(IllegalArgumentException.class, () -> new StraightLine(size, 1));
    }

    /** Points of the intersection at even steps round the branch, and the angle between the surfaces' normals there. */
    private static double counted(Lay lay, double limit) {
        int steps = 40_000;
        double theta = Math.toRadians(lay.degrees);
        double length = 0;
        double wider = 0;
        double[] before = point(lay, theta, 0);
        for (int i = 1; i <= steps; i++) {
            double[] after = point(lay, theta, 2 * Math.PI * i / steps);
            double chord = Math.sqrt(Math.pow(after[0] - before[0], 2)
                    + Math.pow(after[1] - before[1], 2)
                    + Math.pow(after[2] - before[2], 2));
            length += chord;
            if (after[3] > limit) {
                wider += chord;
            }
            before = after;
        }
        return wider / length;
    }

    private static double[] point(Lay lay, double theta, double phi) {
        double y = lay.offset + lay.beta * Math.sin(phi);
        double z = Math.sqrt(1 - y * y);
        double s = (z - lay.beta * Math.cos(phi) * Math.cos(theta)) / Math.sin(theta);
        double x = s * Math.cos(theta) - lay.beta * Math.cos(phi) * Math.sin(theta);
        double normals = Math.sin(phi) * y + Math.cos(phi) * Math.cos(theta) * z;
        return new double[] {x, y, z, Math.PI - Math.acos(normals)};
    }

    private static Seam.Course course(double beta, double degrees, double offset) {
        return SeamIntegral.along(new TwoTubes(beta, 1, Math.toRadians(degrees), offset), FILLET)
                .course()
                .orElseThrow();
    }

    private static double shareWiderThan(RootLine line, DepositSection section, double dihedral) {
        return SeamIntegral.byZones(line, section, dihedral).shares().get(1);
    }
}
