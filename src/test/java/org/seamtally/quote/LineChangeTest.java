package org.seamtally.quote;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.joda.money.Money;
import org.junit.jupiter.api.Test;

/** Lines of two revisions put side by side, and what moved the price: sums worked by hand. */
class LineChangeTest {

    private static PricedLine line(String item, String amount) {
        return new PricedLine(item, Optional.empty(), Optional.empty(), Money.parse(amount));
    }

    private static LineChange change(PricedLine from, PricedLine to) {
        return new LineChange("x", Optional.ofNullable(from), Optional.ofNullable(to));
    }

    @Test
    void aLineStandsInOneRevisionAtLeast() {
        assertThrows(IllegalArgumentException.class, () -> change(null, null));
    }

    @Test
    void theChangeIsTheLaterAmountLessTheEarlier() {
        assertEquals(
                Optional.of(Money.parse("USD -1.50")),
                change(line("x", "USD 12.00"), line("x", "USD 10.50")).change());
        assertEquals(
                Optional.of(Money.parse("USD 10.50")),
                change(null, line("x", "USD 10.50")).change());
        assertEquals(
                Optional.of(Money.parse("USD -12.00")),
                change(line("x", "USD 12.00"), null).change());
    }

    @Test
    void twoCurrenciesHaveNoDifference() {
        assertEquals(
                Optional.empty(),
                change(line("x", "USD 12.00"), line("x", "EUR 12.00")).change());
    }

    @Test
    void nothingMovedWhereBothAreEqual() {
        assertTrue(change(line("x", "USD 12.00"), line("x", "USD 12.00")).isNone());
        assertFalse(change(line("x", "USD 12.00"), line("x", "USD 12.01")).isNone());
        assertFalse(change(line("x", "USD 12.00"), null).isNone());
        assertFalse(change(null, line("x", "USD 12.00")).isNone());
    }

    @Test
    void linesAreInTheOrderOfTheLaterRevisionAndOneTakenAwayAfterTheOneItFollowed() {
        List<LineChange> changes = LineChange.between(
                List.of(line("paint", "USD 9"), line("arc", "USD 1"), line("fuel", "USD 2"), line("gas", "USD 3")),
                List.of(line("gas", "USD 4"), line("arc", "USD 1"), line("rods", "USD 5")));
        assertEquals(
                List.of("paint", "gas", "arc", "fuel", "rods"),
                changes.stream().map(LineChange::item).toList());
        LineChange gas = changes.get(1);
        assertEquals(Optional.of(line("gas", "USD 3")), gas.from());
        assertEquals(Optional.of(line("gas", "USD 4")), gas.to());
        assertEquals(Optional.empty(), changes.get(3).to());
        assertEquals(Optional.empty(), changes.get(4).from());
    }

    @Test
    void severalTakenAwayInARowKeepTheirOrder() {
        List<LineChange> changes = LineChange.between(
                List.of(line("a", "USD 1"), line("b", "USD 2"), line("c", "USD 3"), line("d", "USD 4")),
                List.of(line("a", "USD 1"), line("d", "USD 4")));
        assertEquals(
                List.of("a", "b", "c", "d"),
                changes.stream().map(LineChange::item).toList());
    }

    @Test
    void ofSeveralForTheSameThingTheFirstStandsByTheFirst() {
        List<LineChange> changes = LineChange.between(
                List.of(line("other work", "USD 1"), line("other work", "USD 2")),
                List.of(line("other work", "USD 10")));
        assertEquals(2, changes.size());
        assertEquals(Optional.of(Money.parse("USD 9.00")), changes.get(0).change());
        assertEquals(Optional.of(Money.parse("USD -2.00")), changes.get(1).change());
    }

    @Test
    void whatMovedThePriceAddsUpToTheChangeOfTheTotal() {
        PriceMove move = PriceMove.of(
                Money.parse("USD 100.00"),
                Money.parse("USD 101.00"),
                Money.parse("USD 98.00"),
                Money.parse("USD 108.50"),
                Money.parse("USD 120.25"));
        assertEquals(Money.parse("USD 1.00"), move.engine());
        assertEquals(Money.parse("USD -3.00"), move.work());
        assertEquals(Money.parse("USD 10.50"), move.otherWork());
        assertEquals(Money.parse("USD 11.75"), move.prices());
        assertEquals(Money.parse("USD 20.25"), move.total());
    }
}
