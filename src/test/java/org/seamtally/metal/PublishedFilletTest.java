package org.seamtally.metal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.seamtally.metal.FilletAdequacy.Zone;
import org.seamtally.metal.FilletSeam.Stretch;
import org.seamtally.metal.FilletZone.Throat;
import org.seamtally.quantity.Phrase;
import org.seamtally.quantity.UnitSystem;

/** AWS D1.1's tubular clause and skewed T-joints, from memory where not marked. */
class PublishedFilletTest {

    private static final double INCH = 0.0254;

    private static final double NO_EDGE = Double.POSITIVE_INFINITY;

    private static FilletSeam seam(double leg, double wall, double... degreesAndShares) {
        return seam(leg, wall, NO_EDGE, FaceForm.FLAT, 0, degreesAndShares);
    }

    private static FilletSeam seam(
            double leg, double wall, double longest, FaceForm face, double rise, double... degreesAndShares) {
        return seam(leg, 0, wall, longest, face, rise, degreesAndShares);
    }

    /** A throat of half the leg everywhere: what the geometry finds is the geometry's affair. */
    private static FilletSeam seam(
            double leg,
            double gap,
            double wall,
            double longest,
            FaceForm face,
            double rise,
            double... degreesAndShares) {
        Stretch[] stretches = new Stretch[degreesAndShares.length / 2];
        for (int i = 0; i < stretches.length; i++) {
            stretches[i] = new Stretch(Math.toRadians(degreesAndShares[2 * i]), degreesAndShares[2 * i + 1], leg / 2);
        }
        return new FilletSeam(leg, gap, wall, longest, face, rise, List.of(stretches));
    }

    private static List<String> causes(FilletSeam seam) {
        return FilletAdequacy.of(seam).cautions().stream().map(Caution::cause).toList();
    }

    private static String text(FilletSeam seam, String cause) {
        return FilletAdequacy.of(seam).cautions().stream()
                .filter(caution -> caution.cause().equals(cause))
                .map(caution -> caution.text().in(UnitSystem.SI))
                .findFirst()
                .orElseThrow();
    }

    /** Leg over wall for a throat of 0.7, 1 and 1.07 walls, at the ends of each zone. */
    @ParameterizedTest
    @CsvSource({
        "59.99, HEEL, 1.5, 1.5, 1.5",
        "30, HEEL, 1.5, 1.5, 1.5",
        "60, SIDE, 1.0, 1.4, 1.5",
        "100, SIDE, 1.0, 1.4, 1.5",
        "100.01, OPEN_TO_110, 1.1, 1.6, 1.75",
        "110, OPEN_TO_110, 1.1, 1.6, 1.75",
        "110.01, OPEN_TO_120, 1.2, 1.8, 2.0",
        "120, OPEN_TO_120, 1.2, 1.8, 2.0"
    })
    void legsOfTheTubularClause(double degrees, FilletZone zone, double low, double full, double over) {
        FilletAdequacy found = FilletAdequacy.of(seam(3e-3, 2e-3, degrees, 1));
        assertEquals(1, found.zones().size());
        Zone only = found.zones().get(0);
        assertEquals(zone, only.zone());
        assertEquals(low, only.demands().get(Throat.SEVEN_TENTHS_OF_WALL).legOfWall());
        assertEquals(full, only.demands().get(Throat.WALL).legOfWall());
        assertEquals(over, only.demands().get(Throat.OVER_WALL).legOfWall());
        assertEquals(full * 2e-3, only.demands().get(Throat.WALL).leg(), 1e-15);
        assertEquals(full * 2e-3, found.leastLeg(Throat.WALL).getAsDouble(), 1e-15);
        assertEquals(1.5, only.legOfWall(), 1e-12);
        assertEquals(1, only.share());
        assertEquals(1.5 >= low, found.meets(Throat.SEVEN_TENTHS_OF_WALL));
        assertEquals(1.5 >= full, found.meets(Throat.WALL));
        assertEquals(1.5 >= over, found.meets(Throat.OVER_WALL));
    }

    @Test
    void throatsAreNamedByTheirShareOfTheWall() {
        assertEquals(0.7, Throat.SEVEN_TENTHS_OF_WALL.ofWall());
        assertEquals(1.0, Throat.WALL.ofWall());
        assertEquals(1.07, Throat.OVER_WALL.ofWall());
    }

    /** Over 120° the clause asks for a bevelled edge. */
    @Test
    void over120AFilletIsNotTaken() {
        FilletAdequacy found = FilletAdequacy.of(seam(3e-3, 2e-3, 120.01, 0.4, 150, 0.6));
        assertEquals(FilletZone.BEVELLED, found.zones().get(0).zone());
        assertTrue(found.zones().get(0).demands().isEmpty());
        assertTrue(found.leastLeg(Throat.WALL).isEmpty());
        assertTrue(FilletAdequacy.of(seam(3e-3, 2e-3, 90, 0.5, 150, 0.5)).meets(Throat.WALL));
        assertEquals(0.6, found.above135(), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> FilletZone.BEVELLED.leg(Throat.WALL));
        assertEquals(1.5e-3, found.leastThroat().getAsDouble(), 1e-12);
    }

    @Test
    void aLegThatIsExactlyEnoughMeetsInInchesToo() {
        assertTrue(FilletAdequacy.of(seam(0.133 * INCH, 0.095 * INCH, 90, 1)).meets(Throat.WALL));
        assertFalse(FilletAdequacy.of(seam(0.1329 * INCH, 0.095 * INCH, 90, 1)).meets(Throat.WALL));
    }

    @Test
    void theHungriestZoneSetsTheLeastLeg() {
        FilletAdequacy found = FilletAdequacy.of(seam(2.5e-3, 2e-3, 50, 0.1, 90, 0.3, 105, 0.2, 115, 0.2, 130, 0.2));
        assertEquals(5, found.zones().size());
        assertEquals(3e-3, found.leastLeg(Throat.SEVEN_TENTHS_OF_WALL).getAsDouble(), 1e-12);
        assertEquals(3.6e-3, found.leastLeg(Throat.WALL).getAsDouble(), 1e-12);
        assertEquals(4e-3, found.leastLeg(Throat.OVER_WALL).getAsDouble(), 1e-12);
        assertFalse(found.meets(Throat.SEVEN_TENTHS_OF_WALL));
        assertTrue(
                found.zones().get(1).demands().get(Throat.SEVEN_TENTHS_OF_WALL).met());
        assertEquals(0.2, found.zones().get(3).share(), 1e-12);
    }

    /** Fillets in skewed joints are taken from 60° to 135°: D. K. Miller, Designing Fillet Welds for Skewed T-joints. */
    @Test
    void sharesOutside60To135() {
        FilletAdequacy found = FilletAdequacy.of(seam(3e-3, 2e-3, 59.9, 0.1, 60, 0.2, 135, 0.3, 135.1, 0.4));
        assertEquals(0.1, found.below60(), 1e-12);
        assertEquals(0.4, found.above135(), 1e-12);
        assertEquals(0.5, found.outside60To135(), 1e-12);
    }

    /** The least throat up to 135°; that of the groove beyond does not enter. */
    @Test
    void theLeastThroatOfTheStretches() {
        FilletAdequacy found = FilletAdequacy.of(new FilletSeam(
                3e-3,
                0,
                2e-3,
                NO_EDGE,
                FaceForm.FLAT,
                0,
                List.of(
                        new Stretch(Math.toRadians(90), 0.25, 2.1e-3),
                        new Stretch(Math.toRadians(60), 0.25, 2.2e-3),
                        new Stretch(Math.toRadians(135), 0.25, 1.1e-3),
                        new Stretch(Math.PI, 0.25, -0.1e-3))));
        assertEquals(1.1e-3, found.leastThroat().getAsDouble());
        assertEquals(2.1e-3, found.zones().get(0).leastThroat().getAsDouble());
        assertEquals(1.1e-3, found.zones().get(1).leastThroat().getAsDouble());
    }

    /** The loss at the root: none from 60°, 3 mm to 45°, 6 mm to 30°, and nothing counts below. */
    @ParameterizedTest
    @CsvSource({"60, 0", "59.9, 3", "45, 3", "44.9, 6", "30, 6"})
    void lossAtTheRoot(double degrees, double loss) {
        FilletAdequacy found = FilletAdequacy.of(seam(20e-3, 10e-3, degrees, 1));
        assertEquals(10e-3 - loss * 1e-3, found.leastThroat().getAsDouble(), 1e-12);
    }

    @Test
    void below30NothingCounts() {
        FilletAdequacy found = FilletAdequacy.of(seam(20e-3, 2e-3, 29.9, 0.5, 90, 0.5));
        assertEquals(0, found.leastThroat().getAsDouble());
        assertFalse(found.meets(Throat.SEVEN_TENTHS_OF_WALL));
        assertTrue(found.leastLeg(Throat.SEVEN_TENTHS_OF_WALL).isEmpty(), "no leg is enough there");
        assertTrue(FilletAdequacy.of(seam(20e-3, 2e-3, 30, 1)).meets(Throat.WALL));
        // a thin leg at 50° does not reach past the loss: no throat, never a negative one
        assertEquals(0, FilletAdequacy.of(seam(3e-3, 2e-3, 50, 1)).leastThroat().getAsDouble());
    }

    @Test
    void onlyGrooveHasNoThroat() {
        assertTrue(FilletAdequacy.of(seam(3e-3, 2e-3, 136, 1)).leastThroat().isEmpty());
    }

    /** At most the longest leg that the edge lets count: a decision of this project. */
    @ParameterizedTest
    @CsvSource({
        // longest leg in, leg in, leg that counts in
        "0.12, 0.125, 0.12",
        "0.12, 0.12, 0.12",
        "0.25, 0.3, 0.25",
        "0.3125, 0.25, 0.25"
    })
    void legAtAnEdge(double longest, double leg, double counts) {
        FilletSeam seam = seam(leg * INCH, 0.1 * INCH, longest * INCH, FaceForm.FLAT, 0, 90, 1);
        assertEquals(counts / 0.1, FilletAdequacy.of(seam).zones().get(0).legOfWall(), 1e-9);
        assertEquals(List.of(), causes(seam));
    }

    /** AWS D1.1's fit-up clause lengthens the leg by the gap, from memory: 3.5 less 0.5 mm is the wall of 3 mm. */
    @ParameterizedTest
    @CsvSource({"3.5, 0.5, 3, true", "3.499, 0.5, 2.999, false", "3, 0, 3, true", "3, 4, 0, false"})
    void theGapIsTakenOffTheLeg(double leg, double gap, double counts, boolean meets) {
        FilletSeam seam = seam(leg * 1e-3, gap * 1e-3, 3e-3, NO_EDGE, FaceForm.FLAT, 0, 90, 1);
        FilletAdequacy found = FilletAdequacy.of(seam);
        assertEquals(counts / 3, found.zones().get(0).legOfWall(), 1e-12);
        assertEquals(meets, found.meets(Throat.SEVEN_TENTHS_OF_WALL));
        assertEquals(
                (3 + gap) * 1e-3, found.leastLeg(Throat.SEVEN_TENTHS_OF_WALL).getAsDouble(), 1e-15);
        assertEquals(meets ? List.of() : List.of("fillet-small"), causes(seam));
        // an edge shortens the leg before the gap is taken off
        assertEquals(
                Math.max(0, 2 - gap) / 3,
                FilletAdequacy.of(seam(leg * 1e-3, gap * 1e-3, 3e-3, 2e-3, FaceForm.FLAT, 0, 90, 1))
                        .zones()
                        .get(0)
                        .legOfWall(),
                1e-12);
    }

    /** 90° asks for 1.0 walls, 105° for 1.1, 130° for no fillet (AWS D1.1, from memory); wall 3 mm. */
    @ParameterizedTest
    @CsvSource({
        // longest leg mm, gap mm, angle, whether a leg fits
        "3, 0, 90, true",
        "2.999, 0, 90, false",
        "3.5, 0.5, 90, true",
        "3.499, 0.5, 90, false",
        "3.3, 0, 105, true",
        "3.299, 0, 105, false"
    })
    void theLeastLegFitsTheEdgeOrIsNotGiven(double longest, double gap, double degrees, boolean fits) {
        FilletSeam seam =
                seam(5e-3, gap * 1e-3, 3e-3, longest * 1e-3, FaceForm.FLAT, 0, degrees, 0.5, 90, 0.25, 130, 0.25);
        FilletAdequacy found = FilletAdequacy.of(seam);
        assertEquals(fits, found.leastLeg(Throat.SEVEN_TENTHS_OF_WALL).isPresent());
        assertTrue(found.leastLeg(Throat.WALL).isEmpty());
        assertEquals(fits, found.meets(Throat.SEVEN_TENTHS_OF_WALL));
        assertEquals(
                fits ? List.of("bevel-asked") : List.of("bevel-asked", "fillet-small", "no-leg-fits-edge"),
                causes(seam));
        if (fits) {
            assertEquals(
                    longest * 1e-3, found.leastLeg(Throat.SEVEN_TENTHS_OF_WALL).getAsDouble(), 1e-15);
        } else {
            assertEquals(gap > 0, text(seam, "no-leg-fits-edge").contains("the root gap taken off"));
        }
    }

    @Test
    void wallsUnderAnEighthLieOutsideTheScope() {
        assertEquals(
                1, FilletAdequacy.of(seam(5e-3, 0.125 * INCH, 90, 1)).scope().size());
        List<Phrase> thin = FilletAdequacy.of(seam(5e-3, 0.1249 * INCH, 90, 1)).scope();
        assertEquals(2, thin.size());
        assertTrue(thin.get(1).in(UnitSystem.SI).contains("outside the code's scope, shown for comparison"));
    }

    @Test
    void aPlainSquareFilletHasNoCaution() {
        assertEquals(List.of(), causes(seam(3e-3, 2e-3, 90, 1)));
        assertEquals(List.of(), causes(seam(2e-3, 2e-3, 60, 0.5, 100, 0.5)));
    }

    @Test
    void rootGrooveAndSmallLegsAreCautioned() {
        FilletSeam seam = seam(2e-3, 2e-3, 50, 0.25, 90, 0.25, 130, 0.3, 140, 0.2);
        assertEquals(List.of("root-not-reached", "bevel-asked", "fillet-small", "heel-throat"), causes(seam));
        assertTrue(text(seam, "root-not-reached").startsWith("25 % of the seam"));
        assertTrue(text(seam, "bevel-asked").startsWith("50 % of the seam"));
        assertTrue(text(seam, "bevel-asked").contains("above 135° (20 %)"));
    }

    /** Common practice, no source: concave and small cracks along the centreline; flat to slightly convex is preferred. */
    @Test
    void concaveFacesAreCautioned() {
        FilletSeam enough = seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONCAVE, 0.05, 90, 1);
        assertEquals(List.of("face-concave"), causes(enough));
        assertFalse(text(enough, "face-concave").contains("the more so"));
        FilletSeam small = seam(1.9e-3, 2e-3, NO_EDGE, FaceForm.CONCAVE, 0.05, 90, 1);
        assertEquals(List.of("fillet-small", "face-concave"), causes(small));
        assertTrue(text(small, "face-concave").contains("the more so as the leg is small"));
    }

    /** Common practice, no source: up to a tenth of its width a face is slightly convex. */
    @Test
    void overConvexFacesAreCautioned() {
        assertEquals(List.of(), causes(seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONVEX, 0.10, 90, 1)));
        FilletSeam over = seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONVEX, 0.101, 90, 1);
        assertEquals(List.of("face-over-convex"), causes(over));
        assertTrue(text(over, "face-over-convex").contains("it stays within EN 25817 levels B to D and AWS D1.1"));
        FilletSeam fifth = seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONVEX, 0.2, 90, 1);
        assertTrue(text(fifth, "face-over-convex").startsWith("The face stands out by 20 % of its width"));
        // 7 mm legs: face 9.90 mm, rise 2.23 mm; B allows 1.99, C 2.48, D1.1 3.2 mm
        FilletSeam wide = seam(7e-3, 5e-3, NO_EDGE, FaceForm.CONVEX, 0.225, 90, 1);
        assertTrue(
                text(wide, "face-over-convex").contains("it exceeds EN 25817 level B. Flat"),
                text(wide, "face-over-convex"));
        assertFalse(text(wide, "face-over-convex").contains("level C"));
    }

    /** EN 25817:1992 no. 13, read: a leg of 6 mm has a face of 8.485 mm; B 1.849, C 2.273, D 3.121 mm. Caps 3, 4, 5 mm. */
    @Test
    void convexityLimitsOfEn25817() {
        double width = 6e-3 * Math.sqrt(2);
        assertEquals(1.849e-3, ConvexityLimit.EN_25817_B.at(width), 5e-7);
        assertEquals(2.273e-3, ConvexityLimit.EN_25817_C.at(width), 5e-7);
        assertEquals(3.121e-3, ConvexityLimit.EN_25817_D.at(width), 5e-7);
        assertEquals(3e-3, ConvexityLimit.EN_25817_B.at(50e-3), 1e-12);
        assertEquals(4e-3, ConvexityLimit.EN_25817_C.at(50e-3), 1e-12);
        assertEquals(5e-3, ConvexityLimit.EN_25817_D.at(50e-3), 1e-12);
    }

    /** AWS D1.1, from memory: 1/16 in up to a face of 5/16 in, 1/8 in below 1 in, then 3/16 in. */
    @ParameterizedTest
    @CsvSource({"0.3125, 0.0625", "0.313, 0.125", "0.999, 0.125", "1.0, 0.1875"})
    void convexityLimitsOfD11(double width, double limit) {
        assertEquals(limit * INCH, ConvexityLimit.AWS_D1_1.at(width * INCH), 1e-12);
    }

    /** A rise that is exactly the limit does not exceed it; the D1.1 limit is exceeded at a narrow stretch alone. */
    @Test
    void limitsThatASeamExceeds() {
        // the face of a 5/16 in wide fillet: leg 0.3125/√2 in; 0.25 of it is 0.078 in, over 1/16 in (and over level B)
        FilletSeam narrow = seam(0.3125 * INCH / Math.sqrt(2), 3e-3, NO_EDGE, FaceForm.CONVEX, 0.25, 90, 0.5, 89, 0.5);
        assertEquals(List.of(ConvexityLimit.EN_25817_B, ConvexityLimit.AWS_D1_1), ConvexityLimit.exceededBy(narrow));
        // 0.2 of it is exactly 1/16 in
        FilletSeam exact = seam(0.3124 * INCH / Math.sqrt(2), 3e-3, NO_EDGE, FaceForm.CONVEX, 0.2, 90, 1);
        assertEquals(List.of(), ConvexityLimit.exceededBy(exact));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 180.001, Double.NaN})
    void anglesThatCannotBeAreRefused(double degrees) {
        assertThrows(IllegalArgumentException.class, () -> new Stretch(Math.toRadians(degrees), 1, 1e-3));
    }

    @Test
    void figuresThatCannotBeAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Stretch(1, 0, 1e-3));
        assertThrows(IllegalArgumentException.class, () -> new Stretch(1, 1.01, 1e-3));
        assertThrows(IllegalArgumentException.class, () -> new Stretch(1, 1, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, -1e-9, 2e-3, NO_EDGE, FaceForm.FLAT, 0, 90, 1));
        assertThrows(
                IllegalArgumentException.class, () -> seam(3e-3, Double.NaN, 2e-3, NO_EDGE, FaceForm.FLAT, 0, 90, 1));
        assertThrows(IllegalArgumentException.class, () -> seam(0, 2e-3, 90, 1));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 0, 90, 1));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 2e-3, 90, 0.5));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 2e-3, 90, 0.6, 91, 0.6));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 2e-3, 0, FaceForm.FLAT, 0, 90, 1));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONVEX, 0.2501, 90, 1));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONCAVE, 0.1001, 90, 1));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 2e-3, NO_EDGE, FaceForm.FLAT, 0.001, 90, 1));
        assertThrows(IllegalArgumentException.class, () -> seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONVEX, -0.1, 90, 1));
        assertEquals(
                0.25, seam(3e-3, 2e-3, NO_EDGE, FaceForm.CONVEX, 0.25, 180, 1).rise());
    }
}
