package org.seamtally.quantity;

import java.math.BigDecimal;
import java.util.Locale;

/**
 * The number at the start of a text, exact: a decimal ("1.5", "2e3"), a fraction ("3/16") or a whole number with a
 * fraction ("1-1/2", "1 1/2").
 *
 * @param numerator exact, carries the sign
 * @param denominator above 0; 1 for a decimal
 * @param end index of the first character after the number
 */
record Amount(BigDecimal numerator, BigDecimal denominator, int end) {

    // double precision ends near 1e308 and 5e-324: anything past 1e±400 is outside whatever the digits and the unit,
    // and a bound keeps exact arithmetic on "1e999999999" from filling the memory
    private static final int LARGEST_EXPONENT = 400;

    static Amount read(String text, Due due) {
        int start = afterSign(text, 0);
        int digits = afterDigits(text, start);
        int end = afterExponent(text, afterFractionalPart(text, digits));
        if (end != digits) {
            return decimal(text, start, end, due);
        }
        if (digits == start) {
            throw notANumber(text, due);
        }
        if (isAt(text, digits, '/')) {
            return fraction(text, start, start, digits, due);
        }
        int second = afterJoint(text, digits);
        if (second > digits && isDigit(text, second)) {
            return fraction(text, start, second, afterDigits(text, second), due);
        }
        return decimal(text, start, end, due);
    }

    /** A plain decimal without exponent or fraction, as money is written. */
    static Amount readMoney(String text, Due due) {
        int start = afterSign(text, 0);
        int end = afterFractionalPart(text, afterDigits(text, start));
        return decimal(text, start, end, due);
    }

    private static Amount decimal(String text, int start, int end, Due due) {
        if (!isDigit(text, start) && !(isAt(text, start, '.') && isDigit(text, start + 1))) {
            throw notANumber(text, due);
        }
        int mark = exponentMark(text, start, end);
        BigDecimal mantissa = new BigDecimal(text.substring(start, mark));
        if (mark < end && mantissa.signum() != 0) {
            mantissa = mantissa.scaleByPowerOfTen(exponent(text, mark + 1, end, due));
        }
        return new Amount(isNegative(text, start) ? mantissa.negate() : mantissa, BigDecimal.ONE, end);
    }

    /**
     * @param whole where the whole number starts
     * @param top where the numerator starts; the same index where there is no whole number
     * @param slash where the bar stands, if it does
     */
    private static Amount fraction(String text, int whole, int top, int slash, Due due) {
        int bottom = slash + 1;
        int end = afterDigits(text, bottom);
        if (!isAt(text, slash, '/') || end == bottom) {
            throw due.malformed(text, "a fraction is written as in 3/16 in or 1-1/2 in");
        }
        BigDecimal numerator = new BigDecimal(text.substring(top, slash));
        BigDecimal denominator = new BigDecimal(text.substring(bottom, end));
        if (denominator.signum() == 0) {
            throw due.malformed(text, "its denominator is zero");
        }
        if (top > whole) {
            if (numerator.compareTo(denominator) >= 0) {
                throw due.malformed(text, "the fraction after a whole number is below 1");
            }
            BigDecimal units = new BigDecimal(text.substring(whole, afterDigits(text, whole)));
            numerator = numerator.add(units.multiply(denominator));
        }
        return new Amount(isNegative(text, whole) ? numerator.negate() : numerator, denominator, end);
    }

    private static int exponent(String text, int start, int end, Due due) {
        boolean negative = isAt(text, start, '-');
        int digit = negative || isAt(text, start, '+') ? start + 1 : start;
        int exponent = 0;
        for (; digit < end; digit++) {
            exponent = exponent * 10 + text.charAt(digit) - '0';
            if (exponent > LARGEST_EXPONENT) {
                throw due.notFinite(text);
            }
        }
        return negative ? -exponent : exponent;
    }

    private static QuantityException notANumber(String text, Due due) {
        String word = text.substring(afterSign(text, 0)).toLowerCase(Locale.ROOT);
        if (word.startsWith("nan") || word.startsWith("inf") || word.startsWith("∞")) {
            return due.notFinite(text);
        }
        return due.malformed(text, "a quantity starts with digits");
    }

    private static boolean isNegative(String text, int start) {
        return isAt(text, start - 1, '-');
    }

    private static int afterSign(String text, int start) {
        return isAt(text, start, '-') || isAt(text, start, '+') ? start + 1 : start;
    }

    private static int afterDigits(String text, int start) {
        int end = start;
        while (isDigit(text, end)) {
            end++;
        }
        return end;
    }

    private static int afterFractionalPart(String text, int start) {
        return isAt(text, start, '.') ? afterDigits(text, start + 1) : start;
    }

    /** Takes "e5", "E+5", "e-5"; an "e" with no digits behind it belongs to the unit. */
    private static int afterExponent(String text, int start) {
        if (!isAt(text, start, 'e') && !isAt(text, start, 'E')) {
            return start;
        }
        int digits = afterSign(text, start + 1);
        return isDigit(text, digits) ? afterDigits(text, digits) : start;
    }

    private static int exponentMark(String text, int start, int end) {
        int mark = start;
        while (mark < end && !isAt(text, mark, 'e') && !isAt(text, mark, 'E')) {
            mark++;
        }
        return mark;
    }

    /** Past what joins a whole number and a fraction: one hyphen, or blanks. */
    private static int afterJoint(String text, int start) {
        if (isAt(text, start, '-')) {
            return start + 1;
        }
        int end = start;
        while (end < text.length() && Blanks.isBlank(text.charAt(end))) {
            end++;
        }
        return end;
    }

    private static boolean isAt(String text, int index, char wanted) {
        return index >= 0 && index < text.length() && text.charAt(index) == wanted;
    }

    // ASCII digits only: what other scripts' digits mean in a drawing's dimension is not for a parser to guess
    private static boolean isDigit(String text, int index) {
        return index < text.length() && text.charAt(index) >= '0' && text.charAt(index) <= '9';
    }
}
