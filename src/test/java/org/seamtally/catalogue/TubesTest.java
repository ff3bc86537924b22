package org.seamtally.catalogue;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.seamtally.quantity.Dimension;

/** Usual sizes of tube: common practice, no source, and EN 10305-1 from memory. */
class TubesTest {

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "1/2 x 0.035 in, 0.0127, 0.000889",
        "1-1/2 x 0.095 in, 0.0381, 0.002413",
        "1-1/4 x 0.083 in, 0.03175, 0.0021082",
        "3 x 0.188 in, 0.0762, 0.0047752",
        "10 x 1 mm, 0.01, 0.001",
        "40 x 2.5 mm, 0.04, 0.0025",
        "80 x 5 mm, 0.08, 0.005",
    })
    void sizes(String designation, double outsideDiameter, double wall) {
        TubeSize size = Tubes.find(designation.toUpperCase()).orElseThrow();
        assertEquals(designation, size.designation());
        assertEquals(outsideDiameter, size.outsideDiameter());
        assertEquals(wall, size.wall());
    }

    @Test
    void theDesignationIsTheSize() {
        for (TubeSize size : Tubes.all()) {
            String unit = size.designation().substring(size.designation().lastIndexOf(' ') + 1);
            String[] numbers = size.designation().replace(" " + unit, "").split(" x ");
            assertEquals(Dimension.LENGTH.read(numbers[0] + unit), size.outsideDiameter(), size.designation());
            assertEquals(Dimension.LENGTH.read(numbers[1] + unit), size.wall(), size.designation());
        }
    }

    @Test
    void noSizeTwiceAndEachWithItsStatus() {
        Set<String> seen = new HashSet<>();
        for (TubeSize size : Tubes.all()) {
            assertTrue(seen.add(size.outsideDiameter() + " " + size.wall()), size.designation());
            boolean metric = size.designation().endsWith("mm");
            assertEquals(metric ? Status.FROM_MEMORY : Status.COMMON_PRACTICE, size.status());
            assertTrue(size.source().contains(metric ? "EN 10305-1" : "usual size"));
        }
        assertTrue(seen.size() > 150);
        assertTrue(Tubes.find("1-1/2 x 0.2 in").isEmpty());
    }

    @ParameterizedTest
    @CsvSource({"0.02, 0", "0.02, -0.001", "0.02, 0.01", "0.02, 0.011", "NaN, 0.001", "0.02, NaN", "Infinity, 0.001"})
    void aTubeHasABore(double outsideDiameter, double wall) {
        assertThrows(IllegalArgumentException.class, () -> new TubeSize("x", outsideDiameter, wall, "", Status.READ));
    }

    @Test
    void aBoreOfAHairIsOne() {
        assertEquals(0.00999, new TubeSize("x", 0.02, 0.00999, "", Status.READ).wall());
    }
}
