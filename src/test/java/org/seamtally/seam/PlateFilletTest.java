package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlateFilletTest extends JointContract {

    private static final DepositSection FILLET = DepositSection.ofLeg(3e-3, 0, Face.FLAT);

    @Override
    PlateFillet joint(Draw draw) {
        SplittableRandom random = draw.random();
        double thickness = random.nextDouble(1e-3, 12e-3);
        DepositSection fillet = draw.fillet(random, thickness);
        return new PlateFillet(
                thickness * draw.scale(),
                random.nextDouble(10e-3, 1) * draw.scale(),
                Math.toRadians(random.nextDouble(20, 160)),
                fillet);
    }

    @Override
    Joint.Practice usual() {
        return new Joint.Practice(2, 1);
    }

    /** Mirrored in the plane between the plates a seam has its legs swapped. */
    @Test
    void swappedLegsAreTheSame() {
        Sweep.each(SEED, sweep(), this::swappedLegsAreTheSame);
    }

    private void swappedLegsAreTheSame(Draw draw) {
        PlateFillet joint = joint(draw);
        DepositSection fillet = joint.fillet();
        DepositSection swapped =
                new DepositSection(fillet.legBranch() + fillet.rootGap(), fillet.legMain(), 0, fillet.face());
        double volume = joint.seam().depositVolume();
        assertEquals(
                volume,
                new PlateFillet(joint.thickness(), joint.length(), joint.angle(), swapped)
                        .seam()
                        .depositVolume(),
                1e-12 * volume);
    }

    @Test
    void oneOfTwoEqualPlatesEndsAtTheSeam() {
        PlateFillet joint = new PlateFillet(5e-3, 0.2, Math.PI / 2, FILLET);
        assertEquals(List.of(new Member.Plate(5e-3, 0.2, true), new Member.Plate(5e-3, 0.2, false)), joint.members());
        assertEquals(OptionalDouble.of(5e-3), joint.edge());
        assertEquals(FILLET, joint.section().orElseThrow());
        assertEquals(0.2, joint.seam().length(), 1e-15);
    }

    /** Straight, 90°, equal legs: leg²/2. */
    @Test
    void theMeanSectionIsHalfTheLegSquared() {
        assertEquals(
                4.5e-6, new PlateFillet(5e-3, 0.2, Math.PI / 2, FILLET).seam().meanSection(), 1e-18);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 19.9, 160.1, 180, Double.NaN})
    void anglesOutOfRangeAreRefused(double degrees) {
        assertThrows(IllegalArgumentException.class, () -> new PlateFillet(5e-3, 0.2, Math.toRadians(degrees), FILLET));
    }
}
