package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MemberTest {

    /** π/4 (D² − d²) for 40 mm outside and 30 mm inside: 549.779 mm². */
    @Test
    void aTubesSteelIsARing() {
        assertEquals(549.779e-6, new Member.Tube(40e-3, 5e-3, 0, 1).steelArea(), 5.1e-10);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 1e-3, 0, 1",
        "-0.04, 1e-3, 0, 1",
        "NaN, 1e-3, 0, 1",
        "0.04, 0, 0, 1",
        "0.04, 0.02, 0, 1",
        "0.04, NaN, 0, 1",
        "0.04, 0.002, -1e-9, 1",
        "0.04, 0.002, NaN, 1",
        "0.04, 0.002, 0, 0",
        "0.04, 0.002, 0, 3"
    })
    void tubesThatCannotBeAreRefused(double diameter, double wall, double footprint, int waysOut) {
        assertThrows(IllegalArgumentException.class, () -> new Member.Tube(diameter, wall, footprint, waysOut));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "-1e-3, 0", "NaN, 0", "1e-3, -1e-9", "1e-3, NaN"})
    void platesThatCannotBeAreRefused(double thickness, double footprint) {
        assertThrows(IllegalArgumentException.class, () -> new Member.Plate(thickness, footprint, false));
    }

    @Test
    void theEdgesOfTheRangesAreTaken() {
        assertEquals(0.0199, new Member.Tube(0.04, 0.0199, 0, 2).wall());
        assertEquals(1e-3, new Member.Plate(1e-3, 0, true).wall());
    }
}
