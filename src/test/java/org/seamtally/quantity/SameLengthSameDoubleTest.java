package org.seamtally.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A tube sold in inches and the same tube in millimetres are equal to the last bit; 1 in = 25.4 mm is a definition. */
class SameLengthSameDoubleTest {

    private static final BigDecimal MILLIMETRES_IN_AN_INCH = new BigDecimal("25.4");

    static Stream<BigDecimal> inches() {
        return SweepOfDecimals.of(500);
    }

    @ParameterizedTest(name = "{0} in, seed " + SweepOfDecimals.SEED)
    @MethodSource("inches")
    void inchesAndMillimetres(BigDecimal inches) {
        BigDecimal millimetres = inches.multiply(MILLIMETRES_IN_AN_INCH);
        double metres = millimetres.movePointLeft(3).doubleValue();
        assertEquals(metres, Dimension.LENGTH.read(inches.toPlainString() + " in"));
        assertEquals(metres, Dimension.LENGTH.read(millimetres.toPlainString() + " mm"));
        assertEquals(metres, Dimension.LENGTH.read(millimetres.movePointLeft(1) + " cm"));
        assertEquals(-metres, Dimension.LENGTH.read("-" + inches.toPlainString() + " in"));
    }

    static Stream<int[]> sixtyFourths() {
        Random random = new Random(SweepOfDecimals.SEED);
        return IntStream.range(0, 200)
                .mapToObj(i -> new int[] {random.nextInt(12), 1 + random.nextInt(63), random.nextInt(2)});
    }

    /** n/64 in is exactly n × 0.396875 mm. */
    @ParameterizedTest(name = "seed " + SweepOfDecimals.SEED)
    @MethodSource("sixtyFourths")
    void fractionsAndMillimetres(int[] drawn) {
        int whole = drawn[0];
        int top = drawn[1];
        String inches = whole == 0 ? top + "/64 in" : whole + (drawn[2] == 0 ? "-" : " ") + top + "/64 in";
        BigDecimal millimetres = new BigDecimal("0.396875").multiply(BigDecimal.valueOf(64L * whole + top));
        assertEquals(Dimension.LENGTH.read(millimetres + " mm"), Dimension.LENGTH.read(inches), inches);
    }

    @ParameterizedTest
    @CsvSource({
        "LENGTH, 1.5 in, 38.1 mm",
        "LENGTH, 3/16 in, 4.7625 mm",
        "LENGTH, 1-1/2 in, 38.1 mm",
        "LENGTH, 25 ft, 300 in",
        "LENGTH, 1/3 ft, 4 in",
        "SPEED, 6 in/min, 2.54 mm/s",
        "TIME, 1.5 h, 90 min",
        "TIME, 300 ms, 0.3 s",
        "FLOW, 15 ft3/h, 1/4 ft3/min",
        "FLOW, 6 L/min, 0.36 m3/h",
        "ENERGY_PER_LENGTH, 25.4 kJ/in, 1 kJ/mm",
        "TEMPERATURE, 70 degF, 21-1/9 degC",
        "ELECTRICITY, 1 kWh, 3.6 MJ",
    })
    void sameQuantityInOtherUnits(Dimension dimension, String one, String other) {
        assertEquals(dimension.read(one), dimension.read(other));
    }

    /** The nearest double, found without any of this room's arithmetic: π/180 to 40 digits. */
    @ParameterizedTest
    @CsvSource({"1", "30", "45", "60", "89.9", "135", "180"})
    void degreesAreTheNearestDouble(BigDecimal degrees) {
        BigDecimal pi = new BigDecimal(
                new BigInteger("3141592653589793238462643383279502884197"), 39); // 40 digits, any table of constants
        double radians = pi.multiply(degrees)
                .divide(BigDecimal.valueOf(180), java.math.MathContext.DECIMAL128)
                .doubleValue();
        assertEquals(radians, Dimension.ANGLE.read(degrees + " deg"));
    }
}
