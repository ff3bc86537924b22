package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What every kind of joint keeps to. One subclass a kind says how to draw a joint at random. */
abstract class JointContract {

    static final long SEED = 5;

    /**
     * What a joint is drawn from.
     *
     * @param number the draw's number, for a failure's message
     * @param scale all lengths times this
     * @param deposit the fillet's legs, or what fills the hole, times this
     */
    record Draw(int number, double scale, double deposit) {

        SplittableRandom random() {
            return new SplittableRandom(SEED + number);
        }

        Draw scaled(double by) {
            return new Draw(number, scale * by, deposit);
        }

        Draw fuller(double by) {
            return new Draw(number, scale, deposit * by);
        }

        /** A fillet on parts of about this size before scaling. */
        DepositSection fillet(SplittableRandom random, double size) {
            double leg = size * random.nextDouble(0.05, 0.2);
            double other = leg * random.nextDouble(0.7, 1.4);
            double gap = random.nextBoolean() ? 0 : leg * random.nextDouble(0, 0.3);
            Face face = switch (random.nextInt(3)) {
                case 0 -> Face.FLAT;
                case 1 -> new Face(Face.Form.CONVEX, random.nextDouble(0, 0.25));
                default -> new Face(Face.Form.CONCAVE, random.nextDouble(0, 0.10));
            };
            return new DepositSection(leg * scale * deposit, other * scale * deposit, gap * scale, face);
        }
    }

    static Stream<Draw> sweep() {
        return Stream.iterate(0, i -> i + 1).limit(40).map(i -> new Draw(i, 1, 1));
    }

    /** A joint of this kind, the same one for the same draw. */
    abstract Joint joint(Draw draw);

    /** What is usual for this kind: common practice, no source. */
    abstract Joint.Practice usual();

    /** Whether it fills a hole instead of following a line. */
    boolean plug() {
        return false;
    }

    @Test
    void lengthGoesWithTheSizeAndVolumeWithItsCube() {
        Sweep.each(SEED, sweep(), this::lengthGoesWithTheSizeAndVolumeWithItsCube);
    }

    private void lengthGoesWithTheSizeAndVolumeWithItsCube(Draw draw) {
        Seam one = joint(draw).seam();
        for (double scale : new double[] {0.3, 0.9, 1.7}) {
            Seam other = joint(draw.scaled(scale)).seam();
            assertEquals(scale * one.length(), other.length(), 1e-9 * scale * one.length());
            double volume = scale * scale * scale * one.depositVolume();
            assertEquals(volume, other.depositVolume(), 2e-9 * volume);
            assertEquals(scale * scale * one.meanSection(), other.meanSection(), 3e-9 * one.meanSection());
        }
    }

    @Test
    void aFullerDepositIsMore() {
        Sweep.each(SEED, sweep(), this::aFullerDepositIsMore);
    }

    private void aFullerDepositIsMore(Draw draw) {
        double before = joint(draw.fuller(0.8)).seam().depositVolume();
        assertTrue(before > 0, "volume " + before);
        for (double deposit : new double[] {0.9, 1, 1.001, 1.2}) {
            Seam seam = joint(draw.fuller(deposit)).seam();
            assertTrue(seam.depositVolume() > before, seam.depositVolume() + " after " + before);
            before = seam.depositVolume();
        }
    }

    @Test
    void aSeamHasLengthAndACourseUnlessItIsAPlug() {
        Sweep.each(SEED, sweep(), this::aSeamHasLengthAndACourseUnlessItIsAPlug);
    }

    private void aSeamHasLengthAndACourseUnlessItIsAPlug(Draw draw) {
        Joint joint = joint(draw);
        Seam seam = joint.seam();
        assertEquals(plug(), seam.plug());
        assertEquals(plug(), joint.curve().isEmpty());
        assertEquals(plug(), joint.section().isEmpty());
        assertEquals(plug(), seam.length() == 0);
        assertEquals(plug() ? 0 : seam.depositVolume() / seam.length(), seam.meanSection());
        Optional<Seam.Course> course = seam.course();
        assertEquals(plug(), course.isEmpty());
        course.ifPresent(run -> {
            assertTrue(0 < run.leastDihedral() && run.leastDihedral() <= run.greatestDihedral(), run.toString());
            assertTrue(run.greatestDihedral() <= Math.PI, run.toString());
            assertTrue(run.grooveShare() >= 0 && run.grooveShare() <= 1, run.toString());
            assertEquals(run.greatestDihedral() > DepositSection.WIDEST_FILLET, run.grooveShare() > 0);
            assertEquals(
                    run.leastDihedral() > DepositSection.WIDEST_FILLET,
                    run.leastThroat().isEmpty());
        });
    }

    @Test
    void theWallsAreThoseOfItsMembers() {
        Sweep.each(SEED, sweep(), this::theWallsAreThoseOfItsMembers);
    }

    private void theWallsAreThoseOfItsMembers(Draw draw) {
        Joint joint = joint(draw);
        assertFalse(joint.members().isEmpty());
        double thinnest = Double.POSITIVE_INFINITY;
        double thickest = 0;
        for (Member member : joint.members()) {
            thinnest = Math.min(thinnest, member.wall());
            thickest = Math.max(thickest, member.wall());
        }
        assertEquals(thinnest, joint.thinnerWall());
        assertEquals(thickest, joint.thickerWall());
        joint.edge().ifPresent(edge -> assertTrue(joint.members().stream().anyMatch(m -> m.wall() == edge)));
    }

    @Test
    void tacksAndSegmentsAreTheUsualOnes() {
        assertEquals(usual(), joint(new Draw(0, 1, 1)).usualPractice());
    }
}
