package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The seam's integrals against a reference that marches the implicit equations of both tubes and shares no code. */
class SeamAgainstMarchTest {

    private static final long SEED = 20261124;
    private static final double PROMISED = 1e-9;

    /** One joint of the sweep; its name shows all that is needed to run it again. */
    record Case(double r, double main, double degrees, double offset, DepositSection section) {

        Seam seam() {
            return SeamIntegral.along(new TwoTubes(r, main, Math.toRadians(degrees), offset), section);
        }

        MarchedSeam reference() {
            return MarchedSeam.march(
                    r,
                    main,
                    Math.toRadians(degrees),
                    offset,
                    section.legMain(),
                    section.legBranch(),
                    section.rootGap(),
                    section.face().signedRise());
        }
    }

    static Stream<Case> sweep() {
        double[] gaps = {0.6, 0.3, 0.1, 1e-2, 1e-3, 1e-6, 1e-12};
        SplittableRandom random = new SplittableRandom(SEED);
        return IntStream.range(0, 140).mapToObj(i -> {
            double main = random.nextDouble(5e-3, 60e-3);
            double offset = i % 2 == 0 ? 0 : random.nextDouble(-0.6, 0.6) * main;
            double r = (main - Math.abs(offset)) * (1 - gaps[i % gaps.length]);
            return new Case(r, main, random.nextDouble(20, 160), offset, section(random, r));
        });
    }

    private static DepositSection section(SplittableRandom random, double r) {
        double leg = random.nextDouble(0.05, 0.3) * r;
        double other = leg * random.nextDouble(0.7, 1.4);
        double gap = random.nextBoolean() ? 0 : random.nextDouble(0, 0.3) * leg;
        Face face = switch (random.nextInt(3)) {
            case 0 -> Face.FLAT;
            case 1 -> new Face(Face.Form.CONVEX, random.nextDouble(0, 0.25));
            default -> new Face(Face.Form.CONCAVE, random.nextDouble(0, 0.10));
        };
        return new DepositSection(leg, other, gap, face);
    }

    @Test
    void lengthDepositAndAnglesAgreeWithTheMarch() {
        Sweep.each(SEED, sweep(), SeamAgainstMarchTest::agree);
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 35, 45, 60, 90, 120, 145, 160})
    void tubesOfOneSizeAgreeWithTheMarch(double degrees) {
        agree(new Case(19e-3, 19e-3, degrees, 0, new DepositSection(3e-3, 3e-3, 0, new Face(Face.Form.CONVEX, 0.05))));
        agree(new Case(19e-3, 19e-3, degrees, 0, new DepositSection(3e-3, 4e-3, 0.5e-3, Face.FLAT)));
        agree(new Case(19e-3, 19e-3, degrees, 0, new DepositSection(4e-3, 3e-3, 0, new Face(Face.Form.CONCAVE, 0.1))));
    }

    @ParameterizedTest
    @ValueSource(doubles = {7, 14, -7})
    void aBranchFlushWithTheMainTubesSideAgreesWithTheMarch(double offset) {
        // whole numbers, so that the gap is exactly none in doubles too
        agree(new Case(19 - Math.abs(offset), 19, 50, offset, new DepositSection(2, 2.5, 0, Face.FLAT)));
    }

    @Test
    void lengthAndDepositGoOverContinuouslyIntoTubesOfOneSize() {
        DepositSection section = new DepositSection(3e-3, 4e-3, 0.5e-3, Face.FLAT);
        Seam equal = new Case(19e-3, 19e-3, 45, 0, section).seam();
        Seam nearly = new Case(19e-3 * (1 - 1e-14), 19e-3, 45, 0, section).seam();
        assertEquals(equal.length(), nearly.length(), 1e-6 * equal.length());
        assertEquals(equal.depositVolume(), nearly.depositVolume(), 1e-6 * equal.depositVolume());
    }

    private static void agree(Case joint) {
        Seam seam = joint.seam();
        MarchedSeam reference = joint.reference();
        Seam.Course course = seam.course().orElseThrow();
        assertEquals(reference.length(), seam.length(), PROMISED * reference.length(), "length of " + joint);
        assertEquals(reference.volume(), seam.depositVolume(), PROMISED * reference.volume(), "deposit of " + joint);
        assertEquals(reference.grooveShare(), course.grooveShare(), 1e-8, "groove share of " + joint);
        assertEquals(reference.leastDihedral(), course.leastDihedral(), 1e-7, "least dihedral of " + joint);
        assertEquals(reference.greatestDihedral(), course.greatestDihedral(), 1e-7, "greatest dihedral of " + joint);
    }
}
