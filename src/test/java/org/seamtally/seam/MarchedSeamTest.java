package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.Stream;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference itself, against closed forms, published figures and a plain sum over the other parametrization. */
class MarchedSeamTest {

    private static final double INCH = 25.4;
    private static final double SQUARE = Math.PI / 2;

    // a main tube this large is a plane to rounding: the dihedral angle differs from a plane's by r/R
    private static final double FLAT = 1e14;

    private static final long SEED = 20_250_311L;

    private static void assertClose(double expected, double actual, double relative, String what) {
        assertEquals(expected, actual, relative * Math.abs(expected), what);
    }

    private static MarchedSeam lengthOnly(double r, double mainRadius, double theta, double e) {
        return MarchedSeam.march(r, mainRadius, theta, e, 3, 3, 0, 0);
    }

    /** Perimeter 4·a·E(m), m = 1 − b²/a², by Hipparchus, whose argument is the parameter m. */
    private static double ellipse(double a, double b) {
        return 4 * a * LegendreEllipticIntegral.bigE(1 - b * b / (a * a));
    }

    /** Two equal tubes meet in two planes, square to each other, that halve the angle between the axes. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 30, 45, 60, 75, 90, 110, 135, 160})
    void equalTubesMeetInTwoHalfEllipses(double degrees) {
        double r = 19.05;
        double half = Math.toRadians(degrees) / 2;
        double expected = ellipse(r / Math.sin(half), r) / 2 + ellipse(r / Math.cos(half), r) / 2;
        MarchedSeam seam = lengthOnly(r, r, 2 * half, 0);
        assertClose(expected, seam.length(), 1e-12, "length");
        assertEquals(Math.PI, seam.greatestDihedral(), 0, "the surfaces touch at the saddle");
    }

    /** On a main tube that is all but a plane the seam is the branch's slanting section. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 45, 60, 90, 120, 160})
    void mainTubeGrownFlatLeavesAnEllipse(double degrees) {
        double theta = Math.toRadians(degrees);
        assertClose(
                ellipse(10 / Math.sin(theta), 10),
                lengthOnly(10, FLAT, theta, 0).length(),
                1e-12,
                "length");
    }

    /** A circle on a plane, flat equal legs outside it: Pappus, V = ½z²·2π(r + z/3). */
    @ParameterizedTest
    @ValueSource(doubles = {0.5, 2, 5})
    void ringOfFlatFilletOnAPlaneIsPappusRing(double leg) {
        MarchedSeam seam = MarchedSeam.march(10, FLAT, SQUARE, 0, leg, leg, 0, 0);
        assertClose(2 * Math.PI * 10, seam.length(), 1e-12, "length");
        assertClose(leg * leg / 2 * 2 * Math.PI * (10 + leg / 3), seam.volume(), 1e-12, "volume");
        assertEquals(0, seam.grooveShare(), 0);
    }

    /** The same ring with unequal legs, a gap and a round face: textbook circular segment, Pappus again. */
    @ParameterizedTest
    @CsvSource({"3, 3, 0, 0.25", "3, 4, 0.5, 0.05", "5, 2, 1, -0.10", "2, 6, 0, -0.03"})
    void ringWithARoundFaceIsPappusRing(double legMain, double legBranch, double gap, double rise) {
        double height = legBranch + gap;
        double face = Math.hypot(legMain, height);
        Cap cap = Cap.textbook(face, rise);
        double fromRoot = legMain / 2 * cap.area + cap.moment * height / face;
        double expected = 2 * Math.PI * (legMain * height / 2 * (10 + legMain / 3) + 10 * cap.area + fromRoot);
        assertClose(
                expected,
                MarchedSeam.march(10, FLAT, SQUARE, 0, legMain, legBranch, gap, rise)
                        .volume(),
                1e-12,
                "volume");
    }

    /** Exact intersection length over branch circumference, to the four digits of an independent table. */
    @ParameterizedTest
    @CsvSource({
        "90, 1.0040, 1.0177, 1.0491, 1.0920, 1.2160",
        "60, 1.0830, 1.0977, 1.1313, 1.1772, 1.3104",
        "45, 1.2206, 1.2364, 1.2729, 1.3230, 1.4697",
        "30, 1.5470, 1.5641, 1.6045, 1.6611, 1.8327"
    })
    void lengthFactorsOfTheTable(double degrees, double k25, double k50, double k75, double k90, double k100) {
        double[] ratios = {0.25, 0.5, 0.75, 0.9, 1};
        double[] factors = {k25, k50, k75, k90, k100};
        for (int i = 0; i < ratios.length; i++) {
            double length = lengthOnly(ratios[i], 1, Math.toRadians(degrees), 0).length();
            assertEquals(factors[i], length / (2 * Math.PI * ratios[i]), 5e-5, "at r/R = " + ratios[i]);
        }
    }

    /** L/(2πr) = 4√2·E(½)/(2π) for equal tubes at 90 degrees; E(½) = 1.3506438810 (tables of elliptic integrals). */
    @Test
    void equalTubesSquareToEachOther() {
        assertEquals(
                4 * Math.sqrt(2) * 1.3506438810, lengthOnly(1, 1, SQUARE, 0).length(), 5e-10);
    }

    /** Branch 25.4 mm, main 38.1 mm: lengths to the micrometre from an independent computation. */
    @ParameterizedTest
    @CsvSource({"90, 82.632", "60, 89.111", "45, 100.310", "30, 126.625"})
    void lengthsOfAOneInchBranchOnAnInchAndAHalf(double degrees, double millimetres) {
        assertEquals(
                millimetres,
                lengthOnly(INCH / 2, 0.75 * INCH, Math.toRadians(degrees), 0).length(),
                5e-4);
    }

    /** Equal tubes 1.5 in at 45 degrees, leg 0.125 in, convex by 0.05: figures of another program, same model. */
    @Test
    void chassisJointAgreesWithAnotherProgram() {
        double leg = 0.125 * INCH;
        MarchedSeam seam = MarchedSeam.march(0.75 * INCH, 0.75 * INCH, Math.PI / 4, 0, leg, leg, 0, 0.05);
        assertEquals(175.9137, seam.length(), 5e-5);
        assertEquals(814.383, seam.volume(), 5e-4);
        assertEquals(0.59, seam.grooveShare(), 0.005);
    }

    /** Heel θ, toe 180° − θ; at the saddle 90° + asin(r/R), which at 90 degrees is the greatest. */
    @ParameterizedTest
    @CsvSource({"60, 0.3", "80, 0.5", "100, 0.8", "45, 0.99", "90, 0.3", "90, 0.6666666666666666", "90, 0.99"})
    void dihedralAnglesAtHeelToeAndSaddle(double degrees, double ratio) {
        double theta = Math.toRadians(degrees);
        double saddle = SQUARE + Math.asin(ratio);
        MarchedSeam seam = lengthOnly(ratio, 1, theta, 0);
        assertEquals(Math.min(theta, Math.PI - theta), seam.leastDihedral(), 1e-12);
        if (degrees == 90) {
            assertEquals(saddle, seam.greatestDihedral(), 1e-12);
        } else {
            // a slanting branch opens wider still between saddle and toe
            assertTrue(seam.greatestDihedral() > saddle + 1e-4);
        }
    }

    /** A square T leaves the fillet's range at the saddle first: not before r/R = sin 45°. */
    @Test
    void squareJointHasNoGrooveUpToSine45() {
        assertEquals(0, lengthOnly(Math.sin(Math.PI / 4) - 1e-6, 1, SQUARE, 0).grooveShare(), 0);
        assertTrue(lengthOnly(Math.sin(Math.PI / 4) + 1e-6, 1, SQUARE, 0).grooveShare() > 0);
    }

    static Stream<Arguments> joints() {
        Random random = new Random(SEED);
        return Stream.generate(() -> {
                    double ratio = 0.1 + 0.85 * random.nextDouble();
                    return Arguments.of(
                            ratio,
                            Math.toRadians(20 + 140 * random.nextDouble()),
                            (0.95 - ratio) * (2 * random.nextDouble() - 1),
                            ratio * (0.05 + 0.3 * random.nextDouble()),
                            ratio * (0.05 + 0.3 * random.nextDouble()),
                            ratio * 0.1 * random.nextDouble(),
                            -0.10 + 0.35 * random.nextDouble());
                })
                .limit(24);
    }

    /** Length, volume, share and angles against a plain sum over the azimuth about the branch, another way to put it. */
    @ParameterizedTest(name = "seed " + SEED + ": {arguments}")
    @MethodSource("joints")
    void agreesWithASumOverTheAzimuth(
            double ratio, double theta, double e, double legMain, double legBranch, double gap, double rise) {
        MarchedSeam seam = MarchedSeam.march(ratio, 1, theta, e, legMain, legBranch, gap, rise);
        AzimuthSum sum = AzimuthSum.of(ratio, 1, theta, e, legMain, legBranch + gap, rise);
        assertClose(sum.length, seam.length(), 1e-12, "length");
        assertClose(sum.volume, seam.volume(), 2e-8, "volume");
        assertEquals(sum.grooveShare, seam.grooveShare(), 2e-4, "groove share");
        assertEquals(sum.least, seam.leastDihedral(), 1e-8, "least angle");
        assertEquals(sum.greatest, seam.greatestDihedral(), 1e-8, "greatest angle");
        assertTrue(seam.drift() < 1e-12, "drift");
    }

    /** Offset to the other side, and the angle's supplement, are the same joint seen from elsewhere. */
    @ParameterizedTest(name = "seed " + SEED + ": {arguments}")
    @MethodSource("joints")
    void mirroredJointsAreEqual(
            double ratio, double theta, double e, double legMain, double legBranch, double gap, double rise) {
        MarchedSeam seam = MarchedSeam.march(ratio, 1, theta, e, legMain, legBranch, gap, rise);
        MarchedSeam across = MarchedSeam.march(ratio, 1, theta, -e, legMain, legBranch, gap, rise);
        MarchedSeam along = MarchedSeam.march(ratio, 1, Math.PI - theta, e, legMain, legBranch, gap, rise);
        MarchedSeam inMillimetres = MarchedSeam.march(
                ratio * INCH, INCH, theta, e * INCH, legMain * INCH, legBranch * INCH, gap * INCH, rise);
        for (MarchedSeam other : new MarchedSeam[] {across, along}) {
            assertClose(seam.length(), other.length(), 1e-12, "length");
            assertClose(seam.volume(), other.volume(), 1e-11, "volume");
            assertEquals(seam.grooveShare(), other.grooveShare(), 1e-10, "groove share");
        }
        assertClose(seam.length() * INCH, inMillimetres.length(), 1e-12, "length in another unit");
        assertClose(seam.volume() * INCH * INCH * INCH, inMillimetres.volume(), 1e-11, "volume in another unit");
    }

    /**
     * Towards equal tubes everything nears its limit as the root of the gap, so that two small gaps foretell the
     * limit: unequal legs and a gap at the root, where the corner has a share of its own; and a thin branch flush
     * with the main tube's side.
     */
    @ParameterizedTest
    @CsvSource({"19, 0", "12, 7", "5, 14"})
    void cornerIsTheLimitOfSmallGaps(double r, double e) {
        MarchedSeam wide = near(r, e, 1e-10);
        MarchedSeam narrow = near(r, e, 1e-12);
        MarchedSeam touching = near(r, e, 0);
        assertClose(narrow.length() + (narrow.length() - wide.length()) / 9, touching.length(), 1e-10, "length");
        assertClose(narrow.volume() + (narrow.volume() - wide.volume()) / 9, touching.volume(), 1e-10, "volume");
        assertEquals(
                narrow.grooveShare() + (narrow.grooveShare() - wide.grooveShare()) / 9,
                touching.grooveShare(),
                1e-10,
                "groove share");
    }

    private static MarchedSeam near(double r, double e, double gap) {
        double mainRadius = 19 * (1 + gap);
        return MarchedSeam.march(r, mainRadius, Math.toRadians(60), e, 3, 4, 0.5, -0.05);
    }

    /** An overhang below 1e-9 of the main radius counts as equal. */
    @Test
    void overhangWithinRoundingCountsAsEqual() {
        double equal = lengthOnly(1, 1, 1, 0).length();
        assertClose(equal, lengthOnly(1 + 9e-10, 1, 1, 0).length(), 2e-9, "length");
        assertThrows(IllegalArgumentException.class, () -> lengthOnly(1 + 2e-9, 1, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> lengthOnly(0.5, 1, 1, -0.51));
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> lengthOnly(0, 1, 1, 0));
        assertThrows(IllegalArgumentException.class, () -> lengthOnly(0.5, 1, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> lengthOnly(0.5, 1, Math.PI, 0));
        assertThrows(IllegalArgumentException.class, () -> MarchedSeam.march(1, 2, 1, 0, 0, 1, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> MarchedSeam.march(1, 2, 1, 0, 1, 1, -1, 0));
        assertThrows(IllegalArgumentException.class, () -> MarchedSeam.march(1, 2, 1, 0, 1, 1, 0, 0.26));
        assertThrows(IllegalArgumentException.class, () -> MarchedSeam.march(1, 2, 1, 0, 1, 1, 0, -0.11));
        assertThrows(IllegalArgumentException.class, () -> lengthOnly(Double.NaN, 1, 1, 0));
    }

    /** The circular segment by its textbook formulas: radius, area, distance of the centroid. */
    private record Cap(double area, double moment) {
        static Cap textbook(double chord, double rise) {
            if (rise == 0) {
                return new Cap(0, 0);
            }
            double h = Math.abs(rise) * chord;
            double radius = (chord * chord / 4 + h * h) / (2 * h);
            double angle = 2 * Math.asin(chord / (2 * radius));
            double area = radius * radius * (angle - Math.sin(angle)) / 2;
            double centroid = 4 * radius * Math.pow(Math.sin(angle / 2), 3) / (3 * (angle - Math.sin(angle)));
            // of the chord's two sides a hollow takes the inner one: area and lever both change sign
            return new Cap(Math.signum(rise) * area, area * (centroid - (radius - h)));
        }
    }

    /** The seam by the azimuth φ about the branch: explicit coordinates, equal steps, differences of the tangent. */
    private record AzimuthSum(double length, double volume, double grooveShare, double least, double greatest) {

        private static final int STEPS = 60_000;

        static AzimuthSum of(double r, double big, double theta, double e, double zr, double zb, double rise) {
            double step = 2 * Math.PI / STEPS;
            double length = 0;
            double volume = 0;
            double grooved = 0;
            double least = Math.PI;
            double greatest = 0;
            MarchedVector lastTangent = null;
            MarchedVector lastMoment = null;
            for (int i = 0; i <= STEPS; i++) {
                double phi = i * step;
                double y = e + r * Math.sin(phi);
                double zt = Math.sqrt(big * big - y * y);
                double dy = r * Math.cos(phi);
                double dz = -y * dy / zt;
                double ds = (dz + r * Math.sin(phi) * Math.cos(theta)) / Math.sin(theta);
                MarchedVector u = new MarchedVector(Math.cos(theta), 0, Math.sin(theta));
                MarchedVector v = new MarchedVector(-Math.sin(theta), 0, Math.cos(theta));
                MarchedVector w = new MarchedVector(0, 1, 0);
                MarchedVector speed =
                        u.times(ds).plus(v.times(-r * Math.sin(phi))).plus(w.times(dy));
                MarchedVector nb = v.times(Math.cos(phi)).plus(w.times(Math.sin(phi)));
                MarchedVector nr = new MarchedVector(0, y / big, zt / big);
                double psi = Math.PI - Math.acos(nb.dot(nr));
                MarchedVector a = nb.minus(nr.times(nb.dot(nr))).unit();
                MarchedVector b = nr.minus(nb.times(nb.dot(nr))).unit();

                double limit = Math.toRadians(135);
                double over = Math.max(0, (psi - limit) / (Math.PI - limit));
                double k = rise + (Math.max(rise, 0.10) - rise) * over;
                double face = Math.sqrt(zr * zr + zb * zb - 2 * zr * zb * Math.cos(psi));
                Cap cap = Cap.textbook(face, k);
                MarchedVector tangent = speed.unit();
                MarchedVector outward =
                        a.times(zr).minus(b.times(zb)).cross(tangent).unit();
                outward = outward.times(Math.signum(outward.dot(a.plus(b))));
                double triangle = zr * zb * Math.sin(psi) / 2;
                MarchedVector moment = a.times(zr)
                        .plus(b.times(zb))
                        .times(triangle / 3 + cap.area / 2)
                        .plus(outward.times(cap.moment));
                if (i > 0) {
                    length += speed.norm() * step;
                    volume += (triangle + cap.area) * speed.norm() * step
                            - moment.plus(lastMoment).dot(tangent.minus(lastTangent)) / 2;
                    grooved += psi > limit ? speed.norm() * step : 0;
                }
                least = Math.min(least, psi);
                greatest = Math.max(greatest, psi);
                lastTangent = tangent;
                lastMoment = moment;
            }
            return new AzimuthSum(length, volume, grooved / length, least, greatest);
        }
    }
}
