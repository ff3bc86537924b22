package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.special.elliptic.legendre.LegendreEllipticIntegral;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pieces of a round against a library's elliptic integrals and quadrature. */
class RunningLengthTest {

    private static final long SEED = 1311;

    /** An ellipse's arc from the end of its longer half axis a is a·E(angle, m), by the angle from its shorter one. */
    @ParameterizedTest
    @ValueSource(doubles = {0.0, 0.1, 0.5, 0.9})
    void anEllipsesArcs(double m) {
        RunningLength length = round(256, 2 * Math.PI, t -> Math.sqrt(1 - m * Math.sin(t) * Math.sin(t)));
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 100; i++) {
            double from = random.nextDouble(Math.PI / 2);
            double to = random.nextDouble(Math.PI / 2);
            double arc = LegendreEllipticIntegral.bigE(to, m) - LegendreEllipticIntegral.bigE(from, m);
            assertEquals(arc, length.between(from, to), 1e-10);
        }
    }

    /** With sines as well as cosines, and a round that does not end at 2π. */
    @Test
    void aRoundWithoutSymmetry() {
        double end = 3.7;
        DoubleUnaryOperator speed =
                t -> Math.exp(0.4 * Math.sin(2 * Math.PI * t / end) + 0.3 * Math.cos(4 * Math.PI * t / end + 0.2));
        RunningLength length = round(64, end, speed);
        IterativeLegendreGaussIntegrator library = new IterativeLegendreGaussIntegrator(10, 1e-13, 1e-13);
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 50; i++) {
            double from = random.nextDouble(end / 2);
            double to = from + random.nextDouble(0.1, end / 2);
            assertEquals(
                    library.integrate(10_000, speed::applyAsDouble, from, to), length.between(from, to), 1e-12 * end);
        }
    }

    /** Too few places for a sharp corner: the last harmonics say so, and say less with more places. */
    @Test
    void theLastHarmonicsTellHowFarItIsOff() {
        double m = 0.99;
        DoubleUnaryOperator speed = t -> Math.sqrt(1 - m * Math.sin(t) * Math.sin(t));
        double arc = LegendreEllipticIntegral.bigE(1.5, m) - LegendreEllipticIntegral.bigE(0.1, m);
        double before = Double.POSITIVE_INFINITY;
        for (int points = 16; points <= 512; points *= 2) {
            RunningLength length = round(points, 2 * Math.PI, speed);
            assertTrue(length.tail() < before, "the tail falls");
            before = length.tail();
            assertEquals(arc, length.between(0.1, 1.5), Math.max(1e-13, 20 * length.tail()));
        }
        assertTrue(before < 1e-9, "and is soon nothing");
    }

    private static RunningLength round(int points, double end, DoubleUnaryOperator speed) {
        double[] speeds = new double[points];
        for (int i = 0; i < points; i++) {
            speeds[i] = speed.applyAsDouble(end * i / points);
        }
        return new RunningLength(speeds, end);
    }
}
