package org.seamtally.quantity;

import java.math.BigDecimal;
import java.util.Random;
import java.util.stream.Stream;

/** Decimals as people type them, the same ones each time: the seed is in each test's name. */
final class SweepOfDecimals {

    static final long SEED = 20_240_817L;

    private SweepOfDecimals() {}

    /** Up to six digits, up to four of them after the point. */
    static Stream<BigDecimal> of(int count) {
        Random random = new Random(SEED);
        return Stream.generate(() -> BigDecimal.valueOf(1 + random.nextInt(999_999), random.nextInt(5)))
                .limit(count);
    }
}
