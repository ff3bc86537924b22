package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The share of a seam's length by zones of the dihedral angle. */
class SeamZonesTest {

    private static final double[] LIMITS = {30, 45, 60, 100, 110, 120, 135};
    private static final DepositSection SECTION = DepositSection.ofLeg(3e-3, 0, Face.FLAT);

    private static List<Double> shares(RootLine line) {
        double[] radians = java.util.Arrays.stream(LIMITS).map(Math::toRadians).toArray();
        return SeamIntegral.byZones(line, SECTION, radians).shares();
    }

    /**
     * Equal tubes, and then tubes of any sizes: each share against a count of 20 000 stations along each stretch, plain
     * arithmetic that knows nothing of turns and limits.
     */
    @Test
    void sharesAgainstACountOfStations() {
        long seed = 4711;
        Random random = new Random(seed);
        for (int i = 0; i < 12; i++) {
            double main = 25e-3;
            double branch = i == 0 ? main : main * (0.3 + 0.69 * random.nextDouble());
            double offset = i == 0 ? 0 : (main - branch) * (2 * random.nextDouble() - 1);
            double angle = Math.toRadians(25 + 65 * random.nextDouble());
            RootLine line = new TubeToTube(2 * branch, 2e-3, 2 * main, 2e-3, angle, offset, SECTION)
                    .curve()
                    .orElseThrow();
            List<Double> found = shares(line);
            double[] counted = counted(line);
            for (int zone = 0; zone < counted.length; zone++) {
                assertEquals(counted[zone], found.get(zone), 2e-4, "seed " + seed + ", run " + i + ", zone " + zone);
            }
            assertEquals(1, found.stream().mapToDouble(s -> s).sum(), 1e-12);
            assertEquals(
                    SeamIntegral.byZones(line, SECTION, Math.toRadians(100))
                            .shares()
                            .get(1),
                    found.subList(4, 8).stream().mapToDouble(s -> s).sum(),
                    1e-7,
                    "seed " + seed + ", run " + i);
        }
    }

    private static double[] counted(RootLine line) {
        double[] lengths = new double[LIMITS.length + 1];
        double all = 0;
        for (Stretch stretch : line.stretches()) {
            int points = 20_000;
            for (int p = 0; p < points; p++) {
                Station at = stretch.at(stretch.end() * (p + 0.5) / points);
                double piece = at.speed() * stretch.end() / points;
                int zone = 0;
                while (zone < LIMITS.length && Math.toDegrees(at.dihedral()) > LIMITS[zone]) {
                    zone++;
                }
                lengths[zone] += piece;
                all += piece;
            }
        }
        for (int zone = 0; zone < lengths.length; zone++) {
            lengths[zone] /= all;
        }
        return lengths;
    }

    @Test
    void anAngleThatStandsStillHasOneZone() {
        RootLine line =
                new PlateFillet(3e-3, 0.1, Math.toRadians(90), SECTION).curve().orElseThrow();
        double[] found = shares(line).stream().mapToDouble(share -> share).toArray();
        assertArrayEquals(new double[] {0, 0, 0, 1, 0, 0, 0, 0}, found, 1e-14);
    }

    @Test
    void withoutLimitsThereIsOneZone() {
        RootLine line =
                new TubeToTube(30e-3, 2e-3, 50e-3, 2e-3, 1, 0, SECTION).curve().orElseThrow();
        SeamIntegral.ByZones found = SeamIntegral.byZones(line, SECTION);
        assertEquals(List.of(1.0), found.shares());
        assertEquals(SeamIntegral.along(line, SECTION), found.seam());
        assertTrue(found.seam().length() > 0);
    }
}
