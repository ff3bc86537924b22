package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Parts that are rounded to add up: the method of largest remainders, by hand and over a sweep. */
class AddingUpTest {

    @Test
    void whatIsLackingGoesToThoseThatLostMost() {
        // 1.44 + 2.47 + 3.09 = 7.00: rounded by themselves 1.4 + 2.5 + 3.1 = 7.0; cut 1.4 + 2.4 + 3.0 = 6.8, two lack
        assertArrayEquals(new double[] {1.4, 2.5, 3.1}, Figures.addingUp(7, 1, 1.44, 2.47, 3.09));
        // 1.46 + 2.46 + 3.08 = 7.00: rounded by themselves 1.5 + 2.5 + 3.1 = 7.1
        assertArrayEquals(new double[] {1.5, 2.4, 3.1}, Figures.addingUp(7, 1, 1.46, 2.46, 3.08));
        // nothing lost, nothing given
        assertArrayEquals(new double[] {2, 0, 5}, Figures.addingUp(7, 0, 2, 0, 5));
    }

    @Test
    void thirdsAreAHundredPerCent() {
        Quantity third = new Quantity(1, "L");
        assertEquals(
                List.of("33.4\u00a0%", "33.3\u00a0%", "33.3\u00a0%"),
                Figures.shares(new Quantity(3, "L"), List.of(third, third, third)));
        Quantity none = new Quantity(0, "L");
        assertEquals(List.of("0.0\u00a0%", "0.0\u00a0%"), Figures.shares(none, List.of(none, none)));
    }

    @Test
    void partsHaveTheDecimalsOfTheirTotal() {
        assertEquals(
                List.of("108.8", "4.4", "78.6", "20.1"),
                Figures.partsOf(
                        new Quantity(211.896, "L"),
                        Stream.of(108.8, 4.366, 78.58, 20.15)
                                .map(value -> new Quantity(value, "L"))
                                .toList()));
    }

    static Stream<Long> seeds() {
        return LongStream.range(0, 200).boxed();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theyComeToTheTotalAsItIsPrintedAndStayWithinAUnitOfTheirOwn(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double scale = Math.pow(10, random.nextInt(-2, 6));
        int decimals = random.nextInt(4);
        double[] parts = random.doubles(random.nextInt(1, 9))
                .map(part -> part < 0.2 ? 0 : part * scale)
                .toArray();
        // answers hold nine digits: the total is not quite the sum of its parts
        double total = new BigDecimal(Arrays.stream(parts).sum())
                .round(new java.math.MathContext(9))
                .doubleValue();
        double[] rounded = Figures.addingUp(total, decimals, parts);
        BigDecimal sum = Arrays.stream(rounded).mapToObj(BigDecimal::valueOf).reduce(BigDecimal.ZERO, BigDecimal::add);
        assertEquals(0, sum.compareTo(BigDecimal.valueOf(total).setScale(decimals, RoundingMode.HALF_UP)));
        for (int i = 0; i < parts.length; i++) {
            assertTrue(
                    Math.abs(rounded[i] - parts[i]) < Math.pow(10, -decimals) * (1 + 1e-9),
                    rounded[i] + " for " + parts[i]);
            assertTrue(parts[i] > 0 || rounded[i] == 0, "nothing stays nothing");
        }
    }
}
