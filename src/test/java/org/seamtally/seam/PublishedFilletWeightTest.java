package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Weight of weld metal per length of fillet: equal legs, 90°.
 *
 * <p>The handbooks' flat column (The Procedure Handbook of Arc Welding; Blodgett, Design of Weldments) is from memory;
 * it takes steel as 0.283 lb/in³. The other columns are geometry: a triangle and a circular segment.
 */
class PublishedFilletWeightTest {

    private static final double INCH = 25.4e-3;
    private static final double FOOT = 12 * INCH;
    /** lb/in³, as the handbooks round it. */
    private static final double HANDBOOK_DENSITY = 0.283;

    private static final double STEEL = 7850;

    /** Handbook tables of fillet weights, flat faces, lb/ft, three decimals as printed; from memory. */
    @ParameterizedTest(name = "{0}/16 in: {1} lb/ft")
    @CsvSource({"2, .027", "3, .060", "4, .106", "5, .166", "6, .239", "7, .325", "8, .425"})
    void flatFilletsWeighWhatHandbooksPrint(double sixteenths, double poundsPerFoot) {
        double cubicInches = deposit(sixteenths * INCH / 16, FOOT, Face.FLAT) / Math.pow(INCH, 3);
        assertEquals(poundsPerFoot, cubicInches * HANDBOOK_DENSITY, 5.1e-4);
    }

    /** w²/2 · 12 in · 0.283 lb/in³: four decimals, by hand. */
    @ParameterizedTest(name = "{0}/16 in: {1} lb/ft")
    @CsvSource({"2, .0265", "3, .0597", "4, .1061", "5, .1658", "6, .2388", "7, .3250", "8, .4245"})
    void flatFilletsWeighHalfTheLegSquared(double sixteenths, double poundsPerFoot) {
        double cubicInches = deposit(sixteenths * INCH / 16, FOOT, Face.FLAT) / Math.pow(INCH, 3);
        assertEquals(poundsPerFoot, cubicInches * HANDBOOK_DENSITY, 5.1e-5);
    }

    /** A circular face that stands 1/16 in over its chord: A_seg = R²(θ − sin θ)/2, R = (f²/4 + h²)/(2h); steel of 7.85 g/cm³. */
    @ParameterizedTest(name = "{0}/16 in: {1} lb/ft")
    @CsvSource({"3, .0990", "4, .1577", "5, .2298", "6, .3153", "7, .4141", "8, .5263"})
    void aFaceASixteenthHighWeighsItsSegmentMore(double sixteenths, double poundsPerFoot) {
        double leg = sixteenths * INCH / 16;
        Face face = new Face(Face.Form.CONVEX, INCH / 16 / (Math.sqrt(2) * leg));
        double pounds = deposit(leg, FOOT, face) * STEEL / 0.45359237;
        assertEquals(poundsPerFoot, pounds, 5.1e-5);
    }

    /** Legs in mm: kg/m at 7.85 g/cm³, flat and with a circular face that rises a tenth of its width; throat a, mm. */
    @ParameterizedTest(name = "{0} mm: {2} kg/m flat, {3} kg/m round")
    @CsvSource({
        "2, 1.4142, .01570, .01992, .5376",
        "3, 2.1213, .03532, .04482, 1.2095",
        "4, 2.8284, .06280, .07968, 2.1503",
        "5, 3.5355, .09812, .12450, 3.3598",
        "6, 4.2426, .14130, .17928, 4.8382",
        "8, 5.6569, .25120, .31872, 8.6012",
        "10, 7.0711, .39250, .49800, 13.4394",
        "12, 8.4853, .56520, .71712, 19.3527"
    })
    void metricFilletsWeighTheirTriangleAndSegment(
            double leg, double throat, double flat, double round, double segment) {
        Face face = new Face(Face.Form.CONVEX, 0.10);
        double metres = leg * 1e-3;
        assertEquals(flat, deposit(metres, 1, Face.FLAT) * STEEL, 5.1e-6);
        assertEquals(round, deposit(metres, 1, face) * STEEL, 5.1e-6);
        assertEquals(segment * 1e-6, deposit(metres, 1, face) - deposit(metres, 1, Face.FLAT), 5.1e-11);
        Seam.Course course = seam(metres, 1, Face.FLAT).course().orElseThrow();
        assertEquals(throat * 1e-3, course.leastThroat().orElseThrow(), 5.1e-8);
    }

    /** A hollow face loses what a bulge of the same rise gains. */
    @Test
    void aHollowFaceLosesTheSegment() {
        double flat = deposit(6e-3, 1, Face.FLAT);
        double round = deposit(6e-3, 1, new Face(Face.Form.CONVEX, 0.10));
        double hollow = deposit(6e-3, 1, new Face(Face.Form.CONCAVE, 0.10));
        assertEquals(flat - hollow, round - flat, 1e-18);
        assertEquals((18 - 4.8382) * 1e-6, hollow, 5.1e-11);
    }

    private static double deposit(double leg, double length, Face face) {
        return seam(leg, length, face).depositVolume();
    }

    private static Seam seam(double leg, double length, Face face) {
        return new PlateFillet(12e-3, length, Math.PI / 2, DepositSection.ofLeg(leg, 0, face)).seam();
    }
}
