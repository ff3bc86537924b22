package org.seamtally.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.seamtally.metal.FilletAdequacy;
import org.seamtally.metal.FilletZone.Throat;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Face;
import org.seamtally.seam.Joint;
import org.seamtally.seam.PlateFillet;
import org.seamtally.seam.TubeToPlate;

/** The fillet's check reads the seam that the deposit is reckoned from. */
class FilletAlongSeamTest {

    private static final long SEED = 20260317;

    private static FilletAdequacy check(Joint joint) {
        return FilletAlongSeam.check(joint, FilletAlongSeam.measure(joint));
    }

    private static double seamThroat(Joint joint) {
        return joint.seam().course().orElseThrow().leastThroat().orElseThrow();
    }

    private static Joint plate(double wall, double degrees, DepositSection fillet) {
        return new PlateFillet(wall, 60e-3, Math.toRadians(degrees), fillet);
    }

    /** By hand: 3·3/√(3² + 7²) = 1.1818 mm; of the leg of 3 mm a gap of 4 mm leaves nothing. */
    @Test
    void aGapAsWideAsTheLegLeavesNothingToMeetTheRule() {
        FilletAdequacy found = check(plate(3e-3, 90, DepositSection.ofLeg(3e-3, 4e-3, Face.FLAT)));
        assertEquals(9e-3 / Math.sqrt(58), found.leastThroat().getAsDouble(), 1e-15);
        assertFalse(found.meets(Throat.SEVEN_TENTHS_OF_WALL));
        assertTrue(
                check(plate(3e-3, 90, DepositSection.ofLeg(3e-3, 0, Face.FLAT))).meets(Throat.SEVEN_TENTHS_OF_WALL));
    }

    /** Throat over leg of a flat fillet, cos(ψ/2): D. K. Miller, Designing Fillet Welds for Skewed T-joints. */
    @ParameterizedTest
    @CsvSource({"60, 0.86603", "75, 0.79335", "90, 0.70711", "105, 0.60876", "120, 0.50000", "135, 0.38268"})
    void throatOfAFlatFillet(double degrees, double ofLeg) {
        FilletAdequacy found = check(plate(4e-3, degrees, DepositSection.ofLeg(3e-3, 0, Face.FLAT)));
        assertEquals(ofLeg * 3e-3, found.leastThroat().getAsDouble(), 2e-8);
    }

    static Stream<Joint> joints() {
        Random random = new Random(SEED);
        return Stream.generate(() -> {
                    double leg = 2e-3 + 6e-3 * random.nextDouble();
                    double gap = random.nextBoolean() ? 0 : 2e-3 * random.nextDouble();
                    Face face = switch (random.nextInt(3)) {
                        case 0 -> Face.FLAT;
                        case 1 -> new Face(Face.Form.CONVEX, 0.2 * random.nextDouble());
                        default -> new Face(Face.Form.CONCAVE, 0.1 * random.nextDouble());
                    };
                    DepositSection fillet = DepositSection.ofLeg(leg, gap, face);
                    return random.nextBoolean()
                            ? plate(9e-3, 60 + 75 * random.nextDouble(), fillet)
                            // from 60° at the heel to at most 120° at the toe
                            : new TubeToPlate(40e-3, 3e-3, 5e-3, Math.toRadians(60 + 30 * random.nextDouble()), fillet);
                })
                .limit(200);
    }

    /** Seam and fillet have one throat from 60° to 135°, with and without gap, whatever the face. */
    @ParameterizedTest
    @MethodSource("joints")
    void theSeamAndItsFilletAgreeOnTheThroat(Joint joint) {
        assertEquals(
                Math.max(0, seamThroat(joint)), check(joint).leastThroat().getAsDouble(), 1e-12, () -> "seed " + SEED);
    }

    @ParameterizedTest
    @CsvSource({"60, 0", "60, 4", "90, 0", "90, 4", "135, 0", "135, 4"})
    void theyAgreeAtTheEndsToo(double degrees, double gap) {
        Joint joint = plate(5e-3, degrees, DepositSection.ofLeg(4e-3, gap * 1e-3, Face.FLAT));
        assertEquals(seamThroat(joint), check(joint).leastThroat().getAsDouble(), 1e-15);
    }

    /**
     * Beside a gap the throat of an acute fillet may grow with the angle, so that the heel's own 45° counts and not the 60°
     * where its zone ends. By hand, leg 6 mm, gap 5 mm, 3 mm lost at the root: 36·sin 45°/√(157 − 132·cos 45°) − 3 mm =
     * 0.190 mm, at 60° it were 0.268 mm.
     */
    @Test
    void theNarrowEndOfAZoneCountsBesideAGap() {
        Joint joint =
                new TubeToPlate(40e-3, 3e-3, 5e-3, Math.toRadians(45), DepositSection.ofLeg(6e-3, 5e-3, Face.FLAT));
        double byHand = 36e-3 * Math.sqrt(0.5) / Math.sqrt(157 - 132 * Math.sqrt(0.5)) - 3e-3;
        assertEquals(0.190e-3, byHand, 5e-7);
        assertEquals(byHand, check(joint).zones().get(0).leastThroat().getAsDouble(), 1e-12);
    }

    /** A leg past its edge counts up to the edge's thickness, 8 mm here, in leg and throat alike: by hand 8/√2 mm. */
    @Test
    void aThickEdgeCountsWhole() {
        FilletAdequacy found = check(plate(8e-3, 90, DepositSection.ofLeg(10e-3, 0, Face.FLAT)));
        assertEquals(8e-3 / Math.sqrt(2), found.leastThroat().getAsDouble(), 1e-15);
        assertEquals(1, found.zones().get(0).legOfWall(), 1e-12);
        assertTrue(found.meets(Throat.SEVEN_TENTHS_OF_WALL));
        assertEquals(8e-3, found.leastLeg(Throat.SEVEN_TENTHS_OF_WALL).getAsDouble(), 1e-15);
    }
}
