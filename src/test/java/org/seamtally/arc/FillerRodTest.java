package org.seamtally.arc;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Filler bought for a deposit. */
class FillerRodTest {

    private static final double INCH = 25.4e-3;

    /** 1/16 in × 36 in, a stub of 2 in, 98 % deposited: common sizes, no source. */
    private static final FillerRod ROD = new FillerRod(INCH / 16, 36 * INCH, 2 * INCH, 0.98);

    /** Density of steel: EN 1993-1-2:2005, 3.2.2. */
    @Test
    void steelWeighsWhatTheStandardSays() {
        assertEquals(7850, FillerRod.STEEL_DENSITY);
    }

    /** π/4 · (1.5875 mm)² · 914.4 mm = 1809.89 mm³, 14.2077 g, by hand. */
    @Test
    void aRodWeighsItsSteel() {
        assertEquals(14.2077e-3, ROD.mass(), 5.1e-8);
    }

    /** 10 000 mm³ are 78.5 g; over 0.98 · 34/36 that is 84.8139 g, 5.9696 rods, by hand. */
    @Test
    void stubsAndSpatterAreBoughtToo() {
        FillerUse use = ROD.use(1e-5);
        assertEquals(78.5e-3, use.mass(), 1e-15);
        assertEquals(84.8139e-3, use.consumed(), 5.1e-8);
        assertEquals(5.9696, use.rods(), 5.1e-5);
    }

    /** A frame's 7568.34 mm³ are 59.4114 g deposited and 64.1900 g consumed: by hand as above. */
    @Test
    void aWholeFramesFiller() {
        FillerUse use = ROD.use(7568.34e-9);
        assertEquals(59.4114e-3, use.mass(), 1e-7);
        assertEquals(64.1900e-3, use.consumed(), 1e-7);
    }

    @Test
    void aRodWithoutStubOrSpatterGoesInWhole() {
        FillerUse use = new FillerRod(2e-3, 1, 0, 1).use(1e-6);
        assertEquals(use.mass(), use.consumed());
        assertEquals(0, ROD.use(0).consumed());
    }

    @Test
    void usesAddUpAndMultiply() {
        FillerUse one = new FillerUse(1, 2, 3);
        assertEquals(new FillerUse(11, 22, 33), one.plus(new FillerUse(10, 20, 30)));
        assertEquals(new FillerUse(4, 8, 12), one.times(4));
        assertEquals(one, one.plus(FillerUse.NONE));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void rodsOfNoSizeAreRefused(double size) {
        assertThrows(IllegalArgumentException.class, () -> new FillerRod(size, 1, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new FillerRod(2e-3, size, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new FillerRod(2e-3, 1, 0, size));
    }

    @ParameterizedTest
    @CsvSource({"-1e-9, 1", "1, 1", "1.1, 1", "NaN, 1", "0.05, 1.0000001"})
    void aStubThatLeavesNothingAndAShareAboveOneAreRefused(double stub, double share) {
        assertThrows(IllegalArgumentException.class, () -> new FillerRod(2e-3, 1, stub, share));
    }
}
