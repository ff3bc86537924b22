package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a root line says of itself at a place: sines, cosines and derivatives that belong together. */
class StationTest {

    private static final long SEED = 24;

    static Stream<RootLine> lines() {
        SplittableRandom random = new SplittableRandom(SEED);
        return Stream.generate(() -> {
                    double angle = Math.toRadians(random.nextDouble(20, 160));
                    double offset = random.nextDouble(-0.4, 0.4);
                    return switch (random.nextInt(3)) {
                        case 0 -> new TubeOnPlane(random.nextDouble(0.5, 2), angle);
                        case 1 -> new TwoTubes(random.nextDouble(0.2, 0.6), 1, angle, offset);
                        default -> new TwoTubes(1, 1, angle, 0);
                    };
                })
                .limit(30);
    }

    @Test
    void theDriftIsTheCosinesDerivative() {
        Sweep.each(SEED, lines(), StationTest::assertDrift);
    }

    private static void assertDrift(RootLine line) {
        for (Stretch stretch : line.stretches()) {
            double step = 1e-4 * stretch.end();
            for (double share = 0.05; share < 1; share += 0.1) {
                double p = share * stretch.end();
                Station at = stretch.at(p);
                double slope = (stretch.at(p + step).cosDihedral()
                                - stretch.at(p - step).cosDihedral())
                        / (2 * step);
                assertEquals(slope, at.dihedralDrift(), 1e-5, "at " + share);
                assertEquals(1, at.cosDihedral() * at.cosDihedral() + at.sinDihedral() * at.sinDihedral(), 1e-13);
                assertEquals(Math.acos(at.cosDihedral()), at.dihedral(), 1e-9);
                assertTrue(at.speed() > 0);
            }
        }
    }

    @Test
    void theSpeedAloneIsTheStations() {
        Sweep.each(SEED, lines(), line -> {
            for (Stretch stretch : line.stretches()) {
                for (double share = 0.01; share < 1; share += 0.07) {
                    double p = share * stretch.end();
                    assertEquals(stretch.at(p).speed(), stretch.speed(p), "at " + share);
                }
            }
        });
    }

    /** A smooth line round a tube comes back to its start; a straight one and the halves of equal tubes do not. */
    @Test
    void onlyWhatComesBackSmoothlyIsClosed() {
        assertTrue(new TubeOnPlane(1, 1).closed());
        assertTrue(new TwoTubes(0.5, 1, 1, 0).stretches().get(0).closed());
        assertFalse(new StraightLine(1, 1).closed());
        assertEquals(2, new TwoTubes(1, 1, 1, 0).stretches().size());
        new TwoTubes(1, 1, 1, 0).stretches().forEach(half -> assertFalse(half.closed()));
    }
}
