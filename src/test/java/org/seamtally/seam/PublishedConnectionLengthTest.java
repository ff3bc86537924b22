package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Length of the line in which tubes meet: closed forms through a general-purpose library's elliptic integrals, a table
 * of the exact intersection, and the connection-length factor of AWS D1.1 (tubular clause, from memory), which is an
 * approximation and is held to the bands that it keeps, not to equality.
 */
class PublishedConnectionLengthTest {

    private static final long SEED = 20261125;

    private static final DepositSection FILLET = DepositSection.ofLeg(3e-3, 0, Face.FLAT);

    /** Ellipse with semi-axes r / sin θ and r: 4 a E(m), m = 1 − (b/a)². */
    @ParameterizedTest
    @ValueSource(doubles = {20, 30, 45, 60, 75, 90, 110, 160})
    void aTubeMeetsAPlateInAnEllipse(double degrees) {
        double r = 19.05e-3;
        double theta = Math.toRadians(degrees);
        double ellipse = perimeter(r / Math.sin(theta), r);
        Seam seam = new TubeToPlate(2 * r, 2e-3, 6e-3, theta, FILLET).seam();
        assertEquals(ellipse, seam.length(), 1e-12 * ellipse);
    }

    /** A sleeve's end: the inner tube's circumference. */
    @Test
    void aSleevesSeamIsTheInnerTubesCircumference() {
        Seam seam = new TubeSleeve(31.75e-3, 2e-3, 38.1e-3, 3e-3, FILLET).seam();
        assertEquals(Math.PI * 31.75e-3, seam.length(), 1e-15);
    }

    /**
     * Tubes of one size meet in two half ellipses with semi-axes r / sin(θ/2) and r / cos(θ/2) over r.
     */
    @ParameterizedTest
    @ValueSource(doubles = {20, 35, 45, 60, 90, 120, 160})
    void tubesOfOneSizeMeetInTwoHalfEllipses(double degrees) {
        double r = 19.05e-3;
        double half = Math.toRadians(degrees) / 2;
        double expected = (perimeter(r / Math.sin(half), r) + perimeter(r / Math.cos(half), r)) / 2;
        assertEquals(expected, length(1, degrees), 1e-12 * expected);
    }

    /** 4√2 E(½)/(2π) = 1.21600672, with E(½) = 1.3506438810 (tables of elliptic integrals). */
    @Test
    void tubesOfOneSizeAtARightAngle() {
        assertEquals(1.21600672, length(1, 90) / (Math.PI * 38.1e-3), 5e-9);
    }

    /** A branch much thinner than the main tube sees a plane: the ellipse's length, short of it by the order of β². */
    @ParameterizedTest
    @ValueSource(doubles = {30, 45, 60, 90})
    void aThinBranchSeesAPlane(double degrees) {
        double beta = 1e-5;
        double r = beta * 19.05e-3;
        double ellipse = perimeter(r / Math.sin(Math.toRadians(degrees)), r);
        assertEquals(ellipse, length(beta, degrees), 1e-9 * ellipse);
    }

    /** Exact intersection over 2πr, printed to four decimals: computed apart from the intersection's equations. */
    @ParameterizedTest(name = "{0}°, diameters in the ratio {1}: {3}")
    @CsvSource({
        "90, .25, .9989, 1.0040",
        "90, .5, 1.0174, 1.0177",
        "90, .75, 1.0597, 1.0491",
        "90, .9, 1.1102, 1.0920",
        "90, 1, 1.1671, 1.2160",
        "60, .25, 1.0774, 1.0830",
        "60, .5, 1.0949, 1.0977",
        "60, .75, 1.1352, 1.1313",
        "60, .9, 1.1835, 1.1772",
        "60, 1, 1.2382, 1.3104",
        "45, .25, 1.2159, 1.2206",
        "45, .5, 1.2321, 1.2364",
        "45, .75, 1.2694, 1.2729",
        "45, .9, 1.3143, 1.3230",
        "45, 1, 1.3653, 1.4697",
        "30, .25, 1.5491, 1.5470",
        "30, .5, 1.5630, 1.5641",
        "30, .75, 1.5951, 1.6045",
        "30, .9, 1.6339, 1.6611",
        "30, 1, 1.6782, 1.8327"
    })
    void lengthFactorsOfTheTable(double degrees, double beta, double factor, double exact) {
        assertEquals(exact, length(beta, degrees) / (Math.PI * beta * 38.1e-3), 5.1e-5);
        assertEquals(factor, connectionFactor(beta, Math.toRadians(degrees)), 5.1e-5);
    }

    /** A 25.4 mm branch on a 38.1 mm main tube, mm: D1.1's length and the exact one, each computed apart. */
    @ParameterizedTest(name = "{0}°: {2} mm")
    @CsvSource({"90, 83.115, 82.632", "60, 89.210, 89.111", "45, 100.021, 100.310", "30, 126.187, 126.625"})
    void anInchOnAnInchAndAHalf(double degrees, double rule, double exact) {
        double beta = 25.4 / 38.1;
        assertEquals(exact * 1e-3, length(beta, degrees), 5.1e-7);
        assertEquals(rule, Math.PI * 25.4 * connectionFactor(beta, Math.toRadians(degrees)), 5.1e-4);
    }

    record Pair(double beta, double degrees) {}

    static Stream<Pair> sweep() {
        SplittableRandom random = new SplittableRandom(SEED);
        return Stream.generate(() -> new Pair(random.nextDouble(0.05, 0.9), random.nextDouble(30, 90)))
                .limit(200);
    }

    /** AWS D1.1, circular connection lengths, from memory: within 2 % up to β = 0.9 and from 30° to 90°. */
    @Test
    void theCodesFactorIsWithinTwoPerCentUpToNineTenths() {
        Sweep.each(SEED, sweep(), this::theCodesFactorIsWithinTwoPerCentUpToNineTenths);
    }

    private void theCodesFactorIsWithinTwoPerCentUpToNineTenths(Pair pair) {
        double beta = pair.beta;
        double degrees = pair.degrees;
        double rule = Math.PI * beta * 38.1e-3 * connectionFactor(beta, Math.toRadians(degrees));
        assertEquals(1, rule / length(beta, degrees), 0.02);
    }

    /** AWS D1.1, circular connection lengths, from memory: 4 to 8.5 % short where the tubes are of one size. */
    @ParameterizedTest
    @ValueSource(doubles = {30, 37, 45, 52, 60, 75, 90})
    void theCodesFactorIsShortForTubesOfOneSize(double degrees) {
        double ratio = Math.PI * 38.1e-3 * connectionFactor(1, Math.toRadians(degrees)) / length(1, degrees);
        assertTrue(ratio > 1 - 0.085 && ratio < 1 - 0.04, "ratio " + ratio);
    }

    /** K_a = x + y + 3√(x² + y²), x = 1/(2π sin θ), y = (3 − β²)/(3π(2 − β²)). */
    private static double connectionFactor(double beta, double theta) {
        double x = 1 / (2 * Math.PI * Math.sin(theta));
        double y = (3 - beta * beta) / (3 * Math.PI * (2 - beta * beta));
        return x + y + 3 * Math.hypot(x, y);
    }

    private static double length(double beta, double degrees) {
        double main = 38.1e-3;
        double wall = beta * 2e-3;
        return new TubeToTube(beta * main, wall, main, 2e-3, Math.toRadians(degrees), 0, FILLET)
                .seam()
                .length();
    }

    private static double perimeter(double major, double minor) {
        return 4 * major * LegendreEllipticIntegral.bigE(1 - minor * minor / (major * major));
    }
}
