package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against the language's own format. */
class DecimalsTest {

    private static final long SEED = 20261125;

    @Test
    void anyNumberIsWrittenAsAFormatWritesIt() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 200_000; i++) {
            double value = random.nextDouble(-1, 1) * Math.pow(10, random.nextInt(-6, 14));
            // one in two with few decimals, so that halves are met
            asFormatted(i % 2 == 0 ? value : Math.rint(value * 1e4) / 1e4, random.nextInt(5));
        }
    }

    @ParameterizedTest
    @ValueSource(
            doubles = {0, -0.0, 0.5, 1.5, 2.5, -0.5, 0.05, 0.15, 0.25, 1.005, 0.0005, 0.0004999, 999.9995, 1e12, -0.004
            })
    void halvesAndSmallOnesToo(double value) {
        for (int decimals = 0; decimals <= 4; decimals++) {
            asFormatted(value, decimals);
        }
    }

    private static void asFormatted(double value, int decimals) {
        assertEquals(
                String.format(Locale.ROOT, "%." + decimals + "f", value),
                Decimals.of(value, decimals),
                value + " to " + decimals + " decimals, seed " + SEED);
    }
}
