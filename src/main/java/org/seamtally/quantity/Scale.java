package org.seamtally.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import tech.units.indriya.function.RationalNumber;

/**
 * How a unit's numbers become SI's: {@code si = (x + shift)·multiple/divisor}, exact, with everything taken from the
 * JSR-385 unit once.
 *
 * @param shift 0 for all but temperatures: 273.15 for degrees Celsius, 459.67 for degrees Fahrenheit
 * @param multiple above 0
 * @param divisor 1 wherever the factor is a finite decimal
 * @param perSi this unit's numbers for one of SI, nearest double
 */
record Scale(BigDecimal shift, BigDecimal multiple, BigDecimal divisor, double perSi) {

    // far more digits than double's 17: a quotient that is a short decimal comes out exact, and two spellings of one
    // length meet in the same digits and so in the same double
    private static final MathContext QUOTIENT = new MathContext(50, RoundingMode.HALF_EVEN);

    /**
     * @param unit any unit that converts linearly
     * @param si the SI unit of the same dimension
     */
    static Scale of(Unit<?> unit, Unit<?> si) {
        try {
            UnitConverter converter = unit.getConverterToAny(si);
            RationalNumber atZero = rational(converter.convert((Number) BigInteger.ZERO));
            RationalNumber factor =
                    rational(converter.convert((Number) BigInteger.ONE)).subtract(atZero);
            BigDecimal shift = decimal(atZero.divide(factor));
            BigDecimal numerator = new BigDecimal(factor.getDividend());
            BigDecimal denominator = new BigDecimal(factor.getDivisor());
            double perSi = denominator.divide(numerator, QUOTIENT).doubleValue();
            return isFiniteDecimal(factor)
                    ? new Scale(shift, decimal(factor), BigDecimal.ONE, perSi)
                    : new Scale(shift, numerator, denominator, perSi);
        } catch (javax.measure.IncommensurableException e) {
            throw new IllegalArgumentException(unit + " does not convert to " + si, e);
        }
    }

    /** The exact SI value, or its first 50 digits where it has no finite decimal. */
    BigDecimal toSi(Amount amount) {
        BigDecimal top = amount.numerator();
        if (shift.signum() != 0) {
            top = top.add(shift.multiply(amount.denominator()));
        }
        return quotient(top.multiply(multiple), amount.denominator().multiply(divisor));
    }

    /** An SI value in this unit's numbers, within two units of the last place. */
    double fromSi(double si) {
        return si * perSi - shift.doubleValue();
    }

    boolean isShifted() {
        return shift.signum() != 0;
    }

    private static BigDecimal quotient(BigDecimal top, BigDecimal bottom) {
        return bottom.compareTo(BigDecimal.ONE) == 0 ? top : top.divide(bottom, QUOTIENT);
    }

    private static RationalNumber rational(Number number) {
        return number instanceof RationalNumber already
                ? already
                : RationalNumber.of(new BigDecimal(number.toString()));
    }

    private static boolean isFiniteDecimal(RationalNumber number) {
        BigInteger rest = number.getDivisor();
        for (BigInteger prime : new BigInteger[] {BigInteger.TWO, BigInteger.valueOf(5)}) {
            while (rest.mod(prime).signum() == 0) {
                rest = rest.divide(prime);
            }
        }
        return rest.equals(BigInteger.ONE);
    }

    private static BigDecimal decimal(RationalNumber number) {
        return new BigDecimal(number.getDividend()).divide(new BigDecimal(number.getDivisor()));
    }
}
