package org.seamtally.seam;

import static org.junit.jupiter.api.Assertions.assertAll;

import java.util.function.Consumer;
import java.util.stream.Stream;

/**
 * One check over many drawn cases, as one test: thousands of tests of a millisecond each would make the mutation run,
 * which starts them one by one, last for hours.
 */
final class Sweep {

    private Sweep() {}

    /** Checks each case; a failure names the seed and the case. */
    static <T> void each(long seed, Stream<T> cases, Consumer<T> check) {
        cases.forEach(drawn -> assertAll("seed " + seed + ": " + drawn, () -> check.accept(drawn)));
    }
}
