package org.seamtally.load;

import java.util.List;
import java.util.SplittableRandom;

/** What is left to chance: the same seed casts the same. */
final class Dice {

    private final SplittableRandom random;

    Dice(long seed) {
        random = new SplittableRandom(seed);
    }

    boolean chance(double share) {
        return random.nextDouble() < share;
    }

    /** From 0 to below a bound. */
    int below(int bound) {
        return random.nextInt(bound);
    }

    /** From the least to the most, both included. */
    int from(int least, int most) {
        return random.nextInt(least, most + 1);
    }

    double between(double least, double most) {
        return least + random.nextDouble() * (most - least);
    }

    long bits() {
        return random.nextLong();
    }

    <T> T one(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }
}
