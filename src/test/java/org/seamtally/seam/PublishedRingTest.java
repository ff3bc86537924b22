package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Deposits round a tube, against Pappus's theorem: a section turned about an axis sweeps its area times the way of its
 * centroid (any textbook of mechanics).
 */
class PublishedRingTest {

    private static final long SEED = 1640;

    /** A circle of radius r, equal legs z outside it, flat: V = ½ z² · 2π (r + z/3). */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 3e-3, 8e-3})
    void aFlatRingIsPappussRing(double z) {
        double r = 15.875e-3;
        double expected = z * z / 2 * 2 * Math.PI * (r + z / 3);
        DepositSection fillet = DepositSection.ofLeg(z, 0, Face.FLAT);
        Seam sleeve = new TubeSleeve(2 * r, 2e-3, 48e-3, 4e-3, fillet).seam();
        Seam square = new TubeToPlate(2 * r, 2e-3, 6e-3, Math.PI / 2, fillet).seam();
        assertEquals(expected, sleeve.depositVolume(), 1e-12 * expected);
        assertEquals(expected, square.depositVolume(), 1e-12 * expected);
        assertEquals(expected / (2 * Math.PI * r), sleeve.meanSection(), 1e-12 * sleeve.meanSection());
    }

    record Ring(double r, double degrees, DepositSection fillet) {}

    static Stream<Ring> sweep() {
        SplittableRandom random = new SplittableRandom(SEED);
        return Stream.generate(() -> {
                    double r = random.nextDouble(5e-3, 40e-3);
                    double leg = r * random.nextDouble(0.05, 0.4);
                    double gap = random.nextBoolean() ? 0 : random.nextDouble(0, 0.3) * leg;
                    Face face = random.nextBoolean()
                            ? new Face(Face.Form.CONVEX, random.nextDouble(0, 0.25))
                            : new Face(Face.Form.CONCAVE, random.nextDouble(0, 0.10));
                    double other = leg * random.nextDouble(0.6, 1.6);
                    return new Ring(r, random.nextDouble(20, 160), new DepositSection(leg, other, gap, face));
                })
                .limit(40);
    }

    /**
     * At any slant, with unequal legs, gap and round face: the seam lies in the plate's plane, where Pappus reads V = ∮A
     * ds + ∮M_a dτ, with dτ/dφ = ab/(a² sin² φ + b² cos² φ) for an ellipse. The section is integrated numerically.
     */
    @Test
    void aSlantingTubesDepositFollowsTheEllipse() {
        Sweep.each(SEED, sweep(), this::aSlantingTubesDepositFollowsTheEllipse);
    }

    private void aSlantingTubesDepositFollowsTheEllipse(Ring ring) {
        double theta = Math.toRadians(ring.degrees);
        double b = ring.r;
        double a = ring.r / Math.sin(theta);
        DepositSection fillet = ring.fillet;
        double groove = Math.toRadians(135);
        int steps = 20_000;
        double expected = 0;
        for (int i = 0; i < steps; i++) {
            double phi = 2 * Math.PI * (i + 0.5) / steps;
            double dihedral = Math.PI - Math.acos(Math.cos(phi) * Math.cos(theta));
            MarchedSection section = MarchedSection.at(
                    fillet.legMain(),
                    fillet.legBranch() + fillet.rootGap(),
                    fillet.face().signedRise(),
                    dihedral,
                    dihedral > groove);
            double across = Math.hypot(a * Math.sin(phi), b * Math.cos(phi));
            expected += (section.area() * across + section.momentAlongMain() * a * b / (across * across))
                    * 2
                    * Math.PI
                    / steps;
        }
        double volume = new TubeToPlate(2 * ring.r, ring.r / 10, 6e-3, theta, fillet)
                .seam()
                .depositVolume();
        // the reference's own rule errs by the square of its step where a fillet turns into a groove
        assertEquals(expected, volume, 1e-8 * expected);
    }
}
