package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TubeToTubeTest extends JointContract {

    private static final DepositSection FILLET = DepositSection.ofLeg(3e-3, 0, Face.FLAT);

    @Override
    TubeToTube joint(Draw draw) {
        SplittableRandom random = draw.random();
        double main = random.nextDouble(12e-3, 60e-3);
        double offset = draw.number() % 2 == 0 ? 0 : main / 2 * random.nextDouble(-0.5, 0.5);
        // every third joint without offset is of two tubes of one size
        double branch = draw.number() % 6 == 0 ? main : (main - 2 * Math.abs(offset)) * random.nextDouble(0.3, 0.999);
        DepositSection fillet = draw.fillet(random, branch / 2);
        double angle = Math.toRadians(random.nextDouble(20, 160));
        double s = draw.scale();
        return new TubeToTube(
                branch * s,
                branch * s * random.nextDouble(0.03, 0.2),
                main * s,
                main * s * random.nextDouble(0.03, 0.2),
                angle,
                offset * s,
                fillet);
    }

    @Override
    Joint.Practice usual() {
        return new Joint.Practice(4, 4);
    }

    @Test
    void aJointAndItsMirrorImagesAreTheSame() {
        Sweep.each(SEED, sweep(), this::aJointAndItsMirrorImagesAreTheSame);
    }

    private void aJointAndItsMirrorImagesAreTheSame(Draw draw) {
        TubeToTube joint = joint(draw);
        Seam seam = joint.seam();
        assertSame(seam, turned(joint, Math.PI - joint.angle(), joint.offset()));
        assertSame(seam, turned(joint, joint.angle(), -joint.offset()));
    }

    private static TubeToTube turned(TubeToTube joint, double angle, double offset) {
        return new TubeToTube(
                joint.branchDiameter(),
                joint.branchWall(),
                joint.mainDiameter(),
                joint.mainWall(),
                angle,
                offset,
                joint.fillet());
    }

    private static void assertSame(Seam seam, TubeToTube mirrored) {
        Seam other = mirrored.seam();
        assertEquals(seam.length(), other.length(), 1e-10 * seam.length());
        assertEquals(seam.depositVolume(), other.depositVolume(), 1e-9 * seam.depositVolume());
        assertEquals(
                seam.course().orElseThrow().grooveShare(),
                other.course().orElseThrow().grooveShare(),
                1e-8);
    }

    /** The branch ends in the joint; the main tube runs through, under a footprint of d / sin θ. */
    @Test
    void theBranchEndsAndTheMainTubeRunsThrough() {
        TubeToTube joint = new TubeToTube(25e-3, 2e-3, 38e-3, 3e-3, Math.toRadians(30), 1e-3, FILLET);
        assertEquals(
                List.of(
                        new Member.Tube(25e-3, 2e-3, 0, 1),
                        new Member.Tube(38e-3, 3e-3, 25e-3 / Math.sin(Math.toRadians(30)), 2)),
                joint.members());
        assertEquals(50e-3, ((Member.Tube) joint.members().get(1)).footprint(), 1e-15);
        assertEquals(OptionalDouble.empty(), joint.edge());
        assertEquals(FILLET, joint.section().orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 19.9, 160.1, 180, -45, Double.NaN, Double.POSITIVE_INFINITY})
    void anglesOutOfRangeAreRefused(double degrees) {
        assertThrows(
                IllegalArgumentException.class,
                () -> new TubeToTube(25e-3, 2e-3, 38e-3, 3e-3, Math.toRadians(degrees), 0, FILLET));
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 160})
    void theRangesEndsAreTaken(double degrees) {
        Seam seam = new TubeToTube(25e-3, 2e-3, 38e-3, 3e-3, Math.toRadians(degrees), 0, FILLET).seam();
        assertEquals(20, Math.toDegrees(seam.course().orElseThrow().leastDihedral()), 1e-6);
    }

    /** |e| + r may pass R by a billionth: rounding; not by more. */
    @Test
    void aBranchThatOverhangsIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> square(38.001e-3, 38e-3, 0));
        assertThrows(IllegalArgumentException.class, () -> square(38e-3, 38e-3, 1e-6));
        assertThrows(IllegalArgumentException.class, () -> square(30e-3, 38e-3, 4.001e-3));
        assertThrows(IllegalArgumentException.class, () -> square(30e-3, 38e-3, -4.001e-3));
        assertThrows(IllegalArgumentException.class, () -> square(38e-3 * (1 + 1.1e-9), 38e-3, 0));
        assertThrows(IllegalArgumentException.class, () -> square(Double.NaN, 38e-3, 0));
        assertThrows(IllegalArgumentException.class, () -> square(30e-3, Double.NaN, 0));
        assertThrows(IllegalArgumentException.class, () -> square(30e-3, 38e-3, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> square(0, 38e-3, 0));
    }

    @Test
    void aBranchThatOverhangsByRoundingIsOfOneSize() {
        Seam equal = square(38e-3, 38e-3, 0).seam();
        Seam rounded = square(38e-3 * (1 + 0.9e-9), 38e-3, 0).seam();
        assertEquals(equal.length(), rounded.length(), 1e-12);
    }

    @Test
    void whatFitsIsWhatIsTaken() {
        assertTrue(TubeToTube.fits(38e-3, 38e-3, 0));
        assertTrue(TubeToTube.fits(38e-3 * (1 + 0.9e-9), 38e-3, 0));
        assertFalse(TubeToTube.fits(38e-3 * (1 + 1.1e-9), 38e-3, 0));
        assertTrue(TubeToTube.fits(30e-3, 38e-3, 3.9e-3));
        assertTrue(TubeToTube.fits(30e-3, 38e-3, -3.9e-3));
        assertFalse(TubeToTube.fits(30e-3, 38e-3, 4.1e-3));
        assertFalse(TubeToTube.fits(30e-3, 38e-3, -4.1e-3));
        assertFalse(TubeToTube.fits(Double.NaN, 38e-3, 0));
    }

    private static TubeToTube square(double branch, double main, double offset) {
        return new TubeToTube(branch, 2e-3, main, 3e-3, Math.PI / 2, offset, FILLET);
    }
}
