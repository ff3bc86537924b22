package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TubeSleeveTest extends JointContract {

    private static final DepositSection FILLET = DepositSection.ofLeg(2e-3, 0, Face.FLAT);

    @Override
    TubeSleeve joint(Draw draw) {
        SplittableRandom random = draw.random();
        double branch = random.nextDouble(12e-3, 60e-3);
        double wall = branch * random.nextDouble(0.05, 0.2);
        double sleeve = branch * random.nextDouble(1, 1.05) + 2 * wall;
        DepositSection fillet = draw.fillet(random, wall);
        double s = draw.scale();
        return new TubeSleeve(branch * s, wall * s * random.nextDouble(0.5, 1.5), sleeve * s, wall * s, fillet);
    }

    @Override
    Joint.Practice usual() {
        return new Joint.Practice(3, 2);
    }

    @Test
    void theSleeveEndsAndTheInnerTubeRunsThrough() {
        TubeSleeve joint = new TubeSleeve(25e-3, 2e-3, 32e-3, 3e-3, FILLET);
        assertEquals(List.of(new Member.Tube(32e-3, 3e-3, 0, 1), new Member.Tube(25e-3, 2e-3, 0, 2)), joint.members());
        assertEquals(OptionalDouble.of(3e-3), joint.edge());
        assertEquals(FILLET, joint.section().orElseThrow());
    }

    @Test
    void aTubeTooWideForTheSleeveIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new TubeSleeve(26.001e-3, 2e-3, 32e-3, 3e-3, FILLET));
        assertThrows(IllegalArgumentException.class, () -> new TubeSleeve(Double.NaN, 2e-3, 32e-3, 3e-3, FILLET));
        assertTrue(TubeSleeve.fits(26e-3, 32e-3, 3e-3));
        assertTrue(TubeSleeve.fits(26e-3 * (1 + 0.9e-9), 32e-3, 3e-3));
        assertFalse(TubeSleeve.fits(26e-3 * (1 + 1.1e-9), 32e-3, 3e-3));
    }

    /** A sleeve's end stands square on the tube all round. */
    @Test
    void theAngleIsARightOne() {
        Seam.Course course = joint(new Draw(1, 1, 1)).seam().course().orElseThrow();
        assertEquals(Math.PI / 2, course.leastDihedral(), 1e-12);
        assertEquals(Math.PI / 2, course.greatestDihedral(), 1e-12);
    }
}
