package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The seam unrolled, against closed forms and against the integrals along it. */
class SeamCourseTest {

    private static final double LEG = 3e-3;
    private static final DepositSection FLAT = DepositSection.ofLeg(LEG, 0, Face.FLAT);

    private static List<SeamCourse.Place> course(Joint joint) {
        return SeamCourse.along(joint.curve().orElseThrow(), joint.section().orElseThrow());
    }

    private static TubeToTube tubes(double branch, double main, double angle, double offset, DepositSection section) {
        return new TubeToTube(branch, 1e-3, main, 1e-3, Math.toRadians(angle), offset, section);
    }

    private static double greatest(List<SeamCourse.Place> course) {
        return course.stream().mapToDouble(SeamCourse.Place::dihedral).max().orElseThrow();
    }

    private static double least(List<SeamCourse.Place> course) {
        return course.stream().mapToDouble(SeamCourse.Place::dihedral).min().orElseThrow();
    }

    /** ∮A ds by the trapezoid rule over the places. */
    private static double swept(List<SeamCourse.Place> course) {
        double sum = 0;
        for (int i = 1; i < course.size(); i++) {
            SeamCourse.Place before = course.get(i - 1);
            SeamCourse.Place after = course.get(i);
            sum += (before.section() + after.section()) / 2 * (after.along() - before.along());
        }
        return sum;
    }

    @Test
    void aStraightSeamIsTheSameAllAlong() {
        PlateFillet plates = new PlateFillet(5e-3, 80e-3, Math.toRadians(90), FLAT);
        List<SeamCourse.Place> course = course(plates);
        assertEquals(SeamCourse.MOST_POINTS, course.size());
        assertEquals(0, course.get(0).along());
        assertEquals(80e-3, course.get(180).along(), 1e-12);
        for (SeamCourse.Place place : course) {
            assertEquals(Math.PI / 2, place.dihedral(), 1e-12);
            assertEquals(LEG * LEG / 2, place.section(), 1e-15);
        }
        assertEquals(plates.seam().depositVolume(), swept(course), 1e-15);
    }

    @Test
    void aThinBranchStandsAsOnAPlane() {
        // at 90° on a plane the surfaces meet squarely all round, and the seam is a circle
        List<SeamCourse.Place> course = course(tubes(1e-4, 1, 90, 0, FLAT));
        assertEquals(Math.PI * 1e-4, course.get(course.size() - 1).along(), 1e-10);
        assertEquals(Math.PI / 2, least(course), 1e-4);
        assertEquals(Math.PI / 2, greatest(course), 1.01e-4);
        // at 45° from 45° at the heel to 135° at the toe: an ellipse's ends
        List<SeamCourse.Place> leaning = course(tubes(1e-4, 1, 45, 0, FLAT));
        assertEquals(Math.PI / 4, least(leaning), 1e-4);
        assertEquals(3 * Math.PI / 4, greatest(leaning), 1e-4);
    }

    @Test
    void equalTubesMeetSquarelyAtTheCrownAndTouchAtTheSaddle() {
        // two half ellipses in planes at 45°: where the branch is farthest along the main tube they meet at 90°, at the
        // saddle both surfaces lie in one plane; cos ψ = −sin φ·y/R = −sin²φ
        double radius = 20e-3;
        List<SeamCourse.Place> course = course(tubes(2 * radius, 2 * radius, 90, 0, FLAT));
        assertEquals(181, course.size());
        for (int corner : new int[] {0, 90, 180}) {
            assertEquals(Math.PI, course.get(corner).dihedral(), 1e-7);
            // a groove's face rises to 0.10 of its width, which is both legs here
            assertEquals(
                    FaceSegment.of(DepositSection.GROOVE_RISE).area() * 4 * LEG * LEG,
                    course.get(corner).section(),
                    1e-12);
        }
        for (int crown : new int[] {45, 135}) {
            assertEquals(Math.PI / 2, course.get(crown).dihedral(), 1e-12);
            assertEquals(LEG * LEG / 2, course.get(crown).section(), 1e-15);
        }
        for (int i = 0; i <= 90; i++) {
            double around = Math.PI * i / 90;
            assertEquals(
                    Math.acos(-Math.cos(around) * Math.cos(around)),
                    course.get(i).dihedral(),
                    1e-7);
        }
        // the way round two planes' ellipses of axes R and R√2
        double whole = new org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator(16, 1e-12, 1e-15)
                .integrate(10_000, t -> radius * Math.sqrt(1 + Math.cos(t) * Math.cos(t)), 0, 2 * Math.PI);
        assertEquals(whole, course.get(180).along(), 1e-7 * whole);
    }

    @Test
    void aSleevesRingIsTheSameAllRound() {
        TubeSleeve sleeve = new TubeSleeve(30e-3, 2e-3, 36e-3, 3e-3, FLAT);
        List<SeamCourse.Place> course = course(sleeve);
        assertEquals(Math.PI * 30e-3, course.get(180).along(), 1e-9);
        assertEquals(Math.PI / 2, least(course), 1e-12);
        assertEquals(Math.PI / 2, greatest(course), 1e-12);
    }

    private record Drawn(double branch, double main, double angle, double offset, DepositSection section) {

        TubeToTube joint() {
            return tubes(branch, main, angle, offset, section);
        }
    }

    private static Stream<Drawn> drawn(long seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        return Stream.generate(() -> {
                    double main = random.nextDouble(20e-3, 200e-3);
                    double branch = main * (random.nextInt(5) == 0 ? 1 : random.nextDouble(0.1, 1));
                    return new Drawn(
                            branch,
                            main,
                            random.nextDouble(30, 150),
                            random.nextDouble(-0.5, 0.5) * (main - branch),
                            DepositSection.ofLeg(
                                    random.nextDouble(1e-3, 5e-3),
                                    0,
                                    new Face(Face.Form.CONVEX, random.nextDouble(0, 0.2))));
                })
                .limit(200);
    }

    @Test
    void itIsAsLongAsTheSeamAndRunsBetweenItsAngles() {
        long seed = 20_261;
        Sweep.each(seed, drawn(seed), drawn -> {
            Seam seam = drawn.joint().seam();
            Seam.Course run = seam.course().orElseThrow();
            List<SeamCourse.Place> course = course(drawn.joint());
            assertTrue(course.size() <= SeamCourse.MOST_POINTS);
            assertEquals(seam.length(), course.get(course.size() - 1).along(), 1e-6 * seam.length());
            assertTrue(least(course) >= run.leastDihedral() - 1e-9, "narrower than the narrowest");
            assertTrue(greatest(course) <= run.greatestDihedral() + 1e-9, "wider than the widest");
            assertEquals(run.leastDihedral(), least(course), 0.01);
            assertEquals(run.greatestDihedral(), greatest(course), 0.01);
            for (int i = 1; i < course.size(); i++) {
                assertTrue(course.get(i).along() > course.get(i - 1).along(), "it goes on");
            }
            SeamCourse.Place first = course.get(0);
            SeamCourse.Place last = course.get(course.size() - 1);
            assertEquals(first.dihedral(), last.dihedral(), 1e-7, "a round ends where it began");
        });
    }

    @Test
    void beforeTheSeamTurnsItsSectionIsItsDeposit() {
        // the deposit is ∮A ds less the moment of a line that turns, which goes with leg over radius
        long seed = 20_262;
        Sweep.each(seed, drawn(seed), drawn -> {
            double scale = 1e-3;
            DepositSection small = DepositSection.ofLeg(drawn.section.legMain() * scale, 0, drawn.section.face());
            TubeToTube joint = new Drawn(drawn.branch, drawn.main, drawn.angle, drawn.offset, small).joint();
            double deposit = joint.seam().depositVolume();
            assertEquals(deposit, swept(course(joint)), 5e-3 * deposit);
        });
    }
}
