package org.seamtally.quote;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which prices a quote of a day takes, and what a price book may be called. */
class PriceBookTest {

    private static final PriceBookName NAME = new PriceBookName("shop");
    private static final LocalDate MARCH = LocalDate.of(2031, 3, 1);

    private static PriceBookVersion version(int number, LocalDate effective) {
        return new PriceBookVersion(NAME, number, effective, Optional.empty(), new byte[0], Instant.EPOCH);
    }

    @Test
    void aBookHasAVersionAtLeastAndTheirNumbersRise() {
        assertThrows(IllegalArgumentException.class, () -> new PriceBook(NAME, List.of()));
        PriceBookVersion one = version(1, MARCH);
        PriceBookVersion two = version(2, MARCH);
        assertThrows(IllegalArgumentException.class, () -> new PriceBook(NAME, List.of(two, one)));
        assertThrows(IllegalArgumentException.class, () -> new PriceBook(NAME, List.of(one, one)));
        assertEquals(two, new PriceBook(NAME, List.of(one, two)).latest());
    }

    @Test
    void versionsAreNumberedFromOne() {
        assertThrows(IllegalArgumentException.class, () -> version(0, MARCH));
        assertEquals(1, version(1, MARCH).number());
    }

    @Test
    void aDayTakesTheVersionMadeLastOfThoseEffectiveByThen() {
        PriceBookVersion one = version(1, MARCH);
        PriceBookVersion ahead = version(2, MARCH.plusDays(30));
        PriceBookVersion corrected = version(3, MARCH.plusDays(10));
        PriceBook book = new PriceBook(NAME, List.of(one, ahead, corrected));
        assertEquals(Optional.empty(), book.effectiveOn(MARCH.minusDays(1)));
        assertEquals(Optional.of(one), book.effectiveOn(MARCH));
        assertEquals(Optional.of(one), book.effectiveOn(MARCH.plusDays(9)));
        assertEquals(Optional.of(corrected), book.effectiveOn(MARCH.plusDays(10)));
        assertEquals(Optional.of(corrected), book.effectiveOn(MARCH.plusDays(40)));
        assertEquals(Optional.of(ahead), book.version(2));
        assertEquals(Optional.empty(), book.version(4));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a",
                "7",
                "Märzpreise 2031",
                "shop_a.b-c",
                "123456789012345678901234567890123456789012345678901234567890"
            })
    void namesThatAreTaken(String name) {
        assertTrue(PriceBookName.isName(name));
        assertEquals(name, new PriceBookName(name).toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " a",
                "a ",
                "-a",
                "a.",
                "a/b",
                "a\tb",
                "a\u0000b",
                "1234567890123456789012345678901234567890123456789012345678901"
            })
    void namesThatAreNot(String name) {
        assertFalse(PriceBookName.isName(name));
        assertThrows(IllegalArgumentException.class, () -> new PriceBookName(name));
    }

    @Test
    void lettersWrittenInTwoWaysAreOneNameAndNamesHaveAnOrder() {
        // a with a combining diaeresis
        assertEquals(new PriceBookName("M\u00e4rz"), new PriceBookName("Ma\u0308rz"));
        assertTrue(PriceBookName.isName("Ma\u0308rz"));
        assertTrue(new PriceBookName("a").compareTo(new PriceBookName("b")) < 0);
        assertTrue(new PriceBookName("b").compareTo(new PriceBookName("a")) > 0);
        assertEquals(0, new PriceBookName("a").compareTo(new PriceBookName("a")));
    }
}
