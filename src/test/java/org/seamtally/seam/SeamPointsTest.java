package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How many places a seam takes beside a library's general integrators, at the same true error. Counts, no times. */
class SeamPointsTest {

    private static final double[] DEGREES = {90, 60, 45, 30};

    /**
     * A third up to r/R = 0.9, half to 0.999 and a fiftieth at 1 − 1e-6, over four angles together. If one pass of a general
     * integrator gave length and deposit, the shares would be the second ones: where tubes are far from one size both
     * converge geometrically, and the number of steps goes by doubling.
     */
    @ParameterizedTest
    @CsvSource({
        "0.3, 0.3333, 0.45",
        "0.5, 0.3333, 0.5",
        "0.7, 0.3333, 0.5",
        "0.8, 0.3333, 0.45",
        "0.9, 0.3333, 0.45",
        "0.95, 0.5, 0.6",
        "0.99, 0.5, 0.5",
        "0.999, 0.5, 0.5",
        "0.999999, 0.02, 0.02"
    })
    void aSeamTakesFewPlaces(double ratio, double share, double shareOfShared) {
        double ours = 0;
        double general = 0;
        double shared = 0;
        for (double degrees : DEGREES) {
            SeamPoints.Found found = SeamPoints.at(ratio, degrees);
            assertTrue(found.error() <= SeamPoints.ERROR, found.toString());
            assertNotEquals(SeamPoints.NONE, found.general(), found.toString());
            ours += found.sums();
            general += found.general();
            shared += found.generalShared();
        }
        assertTrue(ours <= share * general, ours + " places to " + general);
        assertTrue(ours <= shareOfShared * shared, ours + " places to " + shared + " of one pass");
    }
}
