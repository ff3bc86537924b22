package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TubeToPlateTest extends JointContract {

    private static final DepositSection FILLET = DepositSection.ofLeg(3e-3, 0, Face.FLAT);

    @Override
    TubeToPlate joint(Draw draw) {
        SplittableRandom random = draw.random();
        double branch = random.nextDouble(12e-3, 60e-3);
        DepositSection fillet = draw.fillet(random, branch / 2);
        double s = draw.scale();
        return new TubeToPlate(
                branch * s,
                branch * s * random.nextDouble(0.03, 0.2),
                s * random.nextDouble(1e-3, 12e-3),
                Math.toRadians(random.nextDouble(20, 160)),
                fillet);
    }

    @Override
    Joint.Practice usual() {
        return new Joint.Practice(4, 4);
    }

    @Test
    void leaningTheOtherWayIsTheSame() {
        Sweep.each(SEED, sweep(), this::leaningTheOtherWayIsTheSame);
    }

    private void leaningTheOtherWayIsTheSame(Draw draw) {
        TubeToPlate joint = joint(draw);
        Seam seam = joint.seam();
        Seam mirrored = new TubeToPlate(
                        joint.branchDiameter(),
                        joint.branchWall(),
                        joint.plateThickness(),
                        Math.PI - joint.angle(),
                        joint.fillet())
                .seam();
        assertEquals(seam.length(), mirrored.length(), 1e-12);
        assertEquals(seam.depositVolume(), mirrored.depositVolume(), 1e-11 * seam.depositVolume());
    }

    @Test
    void theTubeEndsOnAPlateThatIsLargerThanItsFootprint() {
        TubeToPlate joint = new TubeToPlate(25e-3, 2e-3, 5e-3, Math.toRadians(30), FILLET);
        assertEquals(
                List.of(
                        new Member.Tube(25e-3, 2e-3, 0, 1),
                        new Member.Plate(5e-3, 25e-3 / Math.sin(Math.toRadians(30)), false)),
                joint.members());
        assertEquals(50e-3, ((Member.Plate) joint.members().get(1)).footprint(), 1e-15);
        assertEquals(OptionalDouble.empty(), joint.edge());
        assertEquals(FILLET, joint.section().orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 19.9, 160.1, 180, Double.NaN})
    void anglesOutOfRangeAreRefused(double degrees) {
        assertThrows(
                IllegalArgumentException.class,
                () -> new TubeToPlate(25e-3, 2e-3, 5e-3, Math.toRadians(degrees), FILLET));
    }
}
