package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The deposit's section: what it refuses, its segment against a numeric integral, the groove's rise and the throat. */
class DepositSectionTest {

    private static final long SEED = 707;
    private static final double RIGHT = Math.PI / 2;

    private static double segment(double chord, double rise) {
        return FaceSegment.of(rise).area() * chord * chord;
    }

    private static double segmentMoment(double chord, double rise) {
        return FaceSegment.of(rise).moment() * chord * chord * chord;
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-6, 9e-5, 1.1e-4, 1e-3, 0.05, 0.1, 0.2, 0.25})
    void theSegmentIsTheIntegralOfItsHeight(double rise) {
        double chord = 7e-3;
        double area = chord * chord * overUnitChord(rise, 1);
        // below 1e-3 the closed form loses digits: to nine decimals of a segment that is itself next to nothing
        double tolerance = 2e-9 * area;
        assertEquals(area, segment(chord, rise), tolerance);
        assertEquals(-area, segment(chord, -rise), tolerance);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-6, 9e-5, 1.1e-4, 1e-3, 0.05, 0.1, 0.2, 0.25})
    void theSegmentsMomentIsTheIntegralOfItsHeightSquared(double rise) {
        double chord = 7e-3;
        double cube = chord * chord * chord;
        double moment = cube * overUnitChord(rise, 2) / 2;
        // absolute: beside the area's own moment, of the order of the chord's cube, a small rise's does not count
        assertEquals(moment, segmentMoment(chord, rise), 1e-10 * cube);
        assertEquals(moment, segmentMoment(chord, -rise), 1e-10 * cube);
    }

    /** The series for small rises, relative: (2/3) k c² and (4/15) k² c³. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-12, 1e-8, 5e-5})
    void aFlatBulgeIsAParabola(double rise) {
        assertEquals(2 * rise / 3 * 9, segment(3, rise), 1e-7 * rise);
        assertEquals(4 * rise * rise / 15 * 27, segmentMoment(3, rise), 1e-7 * rise * rise);
        assertEquals(overUnitChord(rise, 1), segment(1, rise), 1e-13 * rise);
    }

    @Test
    void noRiseHasNoSegment() {
        assertEquals(0, segment(3, 0));
        assertEquals(0, segmentMoment(3, 0));
    }

    @ParameterizedTest
    @CsvSource({"FLAT, 0", "CONVEX, 0", "CONVEX, 0.25", "CONCAVE, 0", "CONCAVE, 0.10"})
    void risesInRangeAreTaken(Face.Form form, double rise) {
        assertEquals(rise, new Face(form, rise).rise());
    }

    @ParameterizedTest
    @CsvSource({
        "FLAT, 1e-9",
        "FLAT, -1e-9",
        "CONVEX, 0.2500001",
        "CONVEX, -1e-9",
        "CONCAVE, 0.1000001",
        "CONCAVE, -1e-9",
        "CONVEX, NaN",
        "CONCAVE, NaN",
        "FLAT, NaN"
    })
    void risesOutOfRangeAreRefused(Face.Form form, double rise) {
        String message = assertThrows(IllegalArgumentException.class, () -> new Face(form, rise))
                .getMessage();
        assertTrue(message.contains(form.word()), message);
    }

    @Test
    void aConcaveFaceHasAHollowAndANegativeRise() {
        Face concave = new Face(Face.Form.CONCAVE, 0.07);
        Face convex = new Face(Face.Form.CONVEX, 0.07);
        assertEquals(-0.07, concave.signedRise());
        assertEquals(0.07, concave.hollow());
        assertEquals(0.07, convex.signedRise());
        assertEquals(0, convex.hollow());
        assertEquals(0, Face.FLAT.signedRise());
        assertEquals(0, Face.FLAT.hollow());
    }

    @Test
    void formsAreCalledByTheirWords() {
        assertEquals("flat", Face.Form.FLAT.word());
        assertEquals("convex", Face.Form.CONVEX.word());
        assertEquals("concave", Face.Form.CONCAVE.word());
    }

    @Test
    void facesRiseAsFarAsTheirFormAllows() {
        assertEquals(0, Face.Form.FLAT.greatestRise());
        assertEquals(0.25, Face.Form.CONVEX.greatestRise());
        assertEquals(0.10, Face.Form.CONCAVE.greatestRise());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1e-3, Double.NaN, Double.POSITIVE_INFINITY})
    void legsThatAreNoLengthAreRefused(double leg) {
        assertThrows(IllegalArgumentException.class, () -> new DepositSection(leg, 3e-3, 0, Face.FLAT));
        assertThrows(IllegalArgumentException.class, () -> new DepositSection(3e-3, leg, 0, Face.FLAT));
    }

    /** AWS D1.1's fit-up clause, from memory: up to 5 mm; above 1/16 in there is something to say. */
    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, 5.0001e-3, Double.NaN})
    void rootGapsOutOfRangeAreRefused(double gap) {
        assertThrows(IllegalArgumentException.class, () -> DepositSection.ofLeg(3e-3, gap, Face.FLAT));
    }

    @Test
    void rootGapsGoUpToFiveMillimetres() {
        assertEquals(5e-3, DepositSection.ofLeg(3e-3, 5e-3, Face.FLAT).rootGap());
        assertEquals(0, DepositSection.ofLeg(3e-3, 0, Face.FLAT).rootGap());
        assertEquals(1.6e-3, DepositSection.ROOT_GAP_TO_CAUTION);
    }

    @Test
    void equalLegsAreEqual() {
        assertEquals(new DepositSection(3e-3, 3e-3, 1e-3, Face.FLAT), DepositSection.ofLeg(3e-3, 1e-3, Face.FLAT));
    }

    /** Legs 3 and 4 mm at 90° with a gap of 1 mm: a triangle of 3 by 5, by hand. */
    @Test
    void aGapLengthensTheBranchsLeg() {
        DepositSection section = new DepositSection(3e-3, 4e-3, 1e-3, Face.FLAT);
        Seam seam = new PlateFillet(6e-3, 0.2, RIGHT, section).seam();
        assertEquals(7.5e-6, seam.meanSection(), 1e-18);
        assertEquals(Math.sqrt(34) * 1e-3, section.faceWidth(0), 1e-17);
        assertEquals(7e-3, section.faceWidth(0.6) * Math.sqrt(49. / 16), 1e-17);
    }

    /** The rise goes over to a groove's from 135° on, in one line to 180°; a fuller face keeps its own. */
    @ParameterizedTest(name = "{0} {1} at {2}°: {3}")
    @CsvSource({
        "FLAT, 0, 60, 0",
        "FLAT, 0, 135, 0",
        "FLAT, 0, 157.5, 0.05",
        "FLAT, 0, 180, 0.10",
        "CONVEX, 0.04, 135, 0.04",
        "CONVEX, 0.04, 144, 0.052",
        "CONVEX, 0.04, 180, 0.10",
        "CONVEX, 0.20, 157.5, 0.20",
        "CONVEX, 0.20, 180, 0.20",
        "CONCAVE, 0.10, 135, -0.10",
        "CONCAVE, 0.10, 157.5, 0",
        "CONCAVE, 0.10, 180, 0.10"
    })
    void theFaceFillsUpInAGroove(Face.Form form, double rise, double degrees, double expected) {
        DepositSection section = DepositSection.ofLeg(3e-3, 0, new Face(form, rise));
        assertEquals(expected, section.riseAt(Math.toRadians(degrees)), 1e-15);
    }

    @ParameterizedTest
    @EnumSource(Face.Form.class)
    void theRiseIsContinuousWhereTheGrooveBegins(Face.Form form) {
        DepositSection section = DepositSection.ofLeg(3e-3, 0, new Face(form, form.greatestRise()));
        double limit = Math.toRadians(135);
        assertEquals(section.riseAt(limit), section.riseAt(limit + 1e-9), 1e-8);
    }

    /** A straight seam at 150°: triangle and segment by hand, the rise a third of the way from 0 to 0.10. */
    @Test
    void aGroovesSection() {
        double leg = 4e-3;
        double angle = Math.toRadians(150);
        double chord = 2 * leg * Math.sin(angle / 2);
        double expected = leg * leg / 2 * Math.sin(angle) + chord * chord * overUnitChord(0.10 / 3, 1);
        Seam seam = new PlateFillet(6e-3, 0.3, angle, DepositSection.ofLeg(leg, 0, Face.FLAT)).seam();
        assertEquals(expected, seam.meanSection(), 1e-11 * expected);
        Seam.Course course = seam.course().orElseThrow();
        assertEquals(1, course.grooveShare(), 1e-12);
        assertTrue(course.leastThroat().isEmpty(), "no fillet anywhere, so no throat");
    }

    /** At the limit itself it is a fillet yet. */
    @Test
    void aSeamAt135DegreesIsAFillet() {
        Seam.Course course = new PlateFillet(6e-3, 0.3, Math.toRadians(135), DepositSection.ofLeg(4e-3, 0, Face.FLAT))
                .seam()
                .course()
                .orElseThrow();
        assertEquals(0, course.grooveShare());
        assertEquals(4e-3 * Math.cos(Math.toRadians(67.5)), course.leastThroat().orElseThrow(), 1e-15);
    }

    static Stream<DepositSection> sections() {
        SplittableRandom random = new SplittableRandom(SEED);
        return Stream.generate(() -> {
                    double leg = random.nextDouble(1e-3, 8e-3);
                    Face face = switch (random.nextInt(3)) {
                        case 0 -> Face.FLAT;
                        case 1 -> new Face(Face.Form.CONVEX, random.nextDouble(0, 0.25));
                        default -> new Face(Face.Form.CONCAVE, random.nextDouble(0, 0.10));
                    };
                    double gap = random.nextBoolean() ? 0 : random.nextDouble(0, 5e-3);
                    return new DepositSection(leg, leg * random.nextDouble(0.2, 5), gap, face);
                })
                .limit(120);
    }

    /** No gap raises the throat, at any dihedral angle of a fillet, whatever its legs. */
    @Test
    void aGapNeverRaisesTheThroat() {
        Sweep.each(SEED, sections(), this::aGapNeverRaisesTheThroat);
    }

    private void aGapNeverRaisesTheThroat(DepositSection section) {
        for (double degrees = 20; degrees <= 135; degrees += 2.5) {
            double angle = Math.toRadians(degrees);
            double before = Double.POSITIVE_INFINITY;
            for (double gap = 0; gap <= 5e-3; gap += 2e-4) {
                double throat = new DepositSection(section.legMain(), section.legBranch(), gap, section.face())
                        .effectiveThroat(angle);
                assertTrue(throat <= before + 1e-15, degrees + "°, gap " + gap + ": " + throat + " after " + before);
                before = throat;
            }
        }
    }

    /** Without gap or hollow the throat is the distance from the root to the line between the toes. */
    @Test
    void theThroatIsTheRootsDistanceFromTheFace() {
        Sweep.each(SEED, sections(), this::theThroatIsTheRootsDistanceFromTheFace);
    }

    private void theThroatIsTheRootsDistanceFromTheFace(DepositSection drawn) {
        DepositSection section = new DepositSection(drawn.legMain(), drawn.legBranch(), 0, Face.FLAT);
        for (double degrees = 25; degrees <= 135; degrees += 10) {
            double angle = Math.toRadians(degrees);
            double toeX = section.legBranch() * Math.cos(angle);
            double toeY = section.legBranch() * Math.sin(angle);
            double dx = toeX - section.legMain();
            double distance = Math.abs(section.legMain() * toeY) / Math.hypot(dx, toeY);
            assertEquals(distance, section.effectiveThroat(angle), 1e-14, degrees + "°");
        }
    }

    /** The least throat of a run of angles stands at one of its ends: against a dense scan, all faces, unequal legs. */
    @Test
    void theLeastThroatOfASeamIsThatOfADenseScan() {
        Sweep.each(SEED, sections(), this::theLeastThroatOfASeamIsThatOfADenseScan);
    }

    private void theLeastThroatOfASeamIsThatOfADenseScan(DepositSection section) {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 4; i++) {
            Seam.Course course = SeamIntegral.along(
                            new TwoTubes(
                                    random.nextDouble(5e-3, 19e-3),
                                    19e-3,
                                    Math.toRadians(random.nextDouble(20, 160)),
                                    0),
                            section)
                    .course()
                    .orElseThrow();
            double widest = Math.min(course.greatestDihedral(), Math.toRadians(135));
            double scanned = Double.POSITIVE_INFINITY;
            int steps = 1500;
            for (int step = 0; step <= steps; step++) {
                double angle = course.leastDihedral() + (widest - course.leastDihedral()) * step / steps;
                scanned = Math.min(scanned, section.effectiveThroat(angle));
            }
            assertEquals(scanned, course.leastThroat().orElseThrow(), 1e-9 * section.legMain());
        }
    }

    /** ∫ y^power dx under an arc of this rise over a chord of length 1, in a form that keeps its digits. */
    private static double overUnitChord(double rise, int power) {
        double radius = (0.25 + rise * rise) / (2 * rise);
        return new IterativeLegendreGaussIntegrator(24, 1e-14, 1e-300)
                .integrate(
                        100_000,
                        x -> Math.pow((0.25 - x * x) / (Math.sqrt(radius * radius - x * x) + radius - rise), power),
                        -0.5,
                        0.5);
    }

    /** A leg counts up to the edge's thickness, thick or thin: a decision of this project. */
    @Test
    void anEdgeBoundsTheLegByItsThickness() {
        DepositSection section = new DepositSection(8e-3, 7e-3, 1e-3, Face.FLAT);
        assertEquals(8e-3, DepositSection.longestLeg(OptionalDouble.of(8e-3)));
        assertEquals(section, section.within(OptionalDouble.empty()));
        assertEquals(section, section.within(OptionalDouble.of(8e-3)));
        assertEquals(new DepositSection(6.5e-3, 6.5e-3, 1e-3, Face.FLAT), section.within(OptionalDouble.of(6.5e-3)));
        assertFalse(section.passes(OptionalDouble.empty()));
        assertFalse(section.passes(OptionalDouble.of(8e-3)));
        assertFalse(section.passes(OptionalDouble.of(8e-3 * (1 - 5e-10))), "equal to the last bits");
        assertTrue(section.passes(OptionalDouble.of(8e-3 * (1 - 2e-9))));
    }
}
