package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures as people read them; parts of a total are in {@link AddingUpTest}. */
class FiguresTest {

    @ParameterizedTest
    @CsvSource({
        "1234567.891, 2, 1 234 567.89",
        "999.995, 1, 1 000.0",
        "-0.004, 2, 0.00",
        "-0.006, 2, -0.01",
        "12, 0, 12"
    })
    void aNumberHasItsDecimalsAndItsThousandsApart(double value, int decimals, String text) {
        assertEquals(text, Figures.number(value, decimals));
    }

    @ParameterizedTest
    @CsvSource({"1.50, 1.5", "100, 100", "0.00005, 0", "0.00015, 0.0002", "2.34567, 2.3457"})
    void aNumberThatWasGivenGetsNoDigits(double value, String text) {
        assertEquals(text, Figures.plain(value));
        assertEquals(text + " mm", Figures.asGiven(new Quantity(value, "mm")));
    }

    @ParameterizedTest
    @CsvSource({
        "1236.63, 1 236.63",
        "999.00, 999.00",
        "-1236.63, -1 236.63",
        "-236.63, -236.63",
        "1234567, 1 234 567",
        "12345678.9, 12 345 678.9"
    })
    void moneyHasItsThousandsApartAndKeepsItsDigits(String amount, String text) {
        assertEquals(text, Figures.money(amount));
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "175.913711, 175.9",
        "12345.6, 12 346",
        "1.23456, 1.235",
        "-1.23456, -1.235",
        "0.000123456, 0.000123",
        "1000, 1 000",
        "999.96, 1 000.0"
    })
    void fourDigitsAreSignificant(double value, String text) {
        assertEquals(text, Figures.four(value));
        assertEquals(text + " g", Figures.withUnit(new Quantity(value, "g")));
    }

    @Test
    void whereThereIsNoFigureADashStands() {
        assertEquals("-", Figures.four((Quantity) null));
        assertEquals("-", Figures.withUnit(null));
    }

    @ParameterizedTest
    @CsvSource({
        "59.4, 0:00:59, 0:59",
        "59.5, 0:01:00, 1:00",
        "3599, 0:59:59, 59:59",
        "3600, 1:00:00, 60:00",
        "7325, 2:02:05, 122:05"
    })
    void timeIsToldAsClocksTellIt(double seconds, String hours, String minutes) {
        assertEquals(hours, Figures.time(seconds));
        assertEquals(hours, Figures.time(new Quantity(seconds, "s")));
        assertEquals(minutes, Figures.minutes(new Quantity(seconds, "s")));
    }

    @Test
    void aTextIsBrokenWhereALineIsFull() {
        String end = System.lineSeparator();
        assertEquals("- one two" + end + "  three", Figures.wrapped("one two three", 9, "- ", "  "));
        assertEquals("- one" + end + "  two" + end + "  three", Figures.wrapped("one two three", 8, "- ", "  "));
        // no line begins with a sign of per cent, and a word that is too long stands by itself
        assertEquals("- all" + end + "  50 %", Figures.wrapped("all 50 %", 8, "- ", "  "));
        assertEquals("- unbreakable" + end + "  word", Figures.wrapped("unbreakable word", 8, "- ", "  "));
    }
}
