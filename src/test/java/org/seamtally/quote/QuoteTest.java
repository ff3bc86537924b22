package org.seamtally.quote;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.joda.money.Money;
import org.junit.jupiter.api.Test;

/** A quote's revisions and its number. */
class QuoteTest {

    private static RevisionHead head(int number) {
        return new RevisionHead(
                number,
                Instant.EPOCH.plusSeconds(number),
                new ComputedBy("1.2.3", "abc"),
                new Terms(Optional.of("Inquiry 7B"), Optional.empty(), Optional.of("In GREEN")),
                Optional.empty(),
                Optional.of("Rear Bay"),
                Money.parse("USD 12.34"));
    }

    private static Quote quote(List<RevisionHead> revisions) {
        return new Quote(new UUID(1, 2), new QuoteNumber(123), Instant.EPOCH, revisions);
    }

    @Test
    void aQuoteHasARevisionAtLeast() {
        assertThrows(IllegalArgumentException.class, () -> quote(List.of()));
    }

    @Test
    void aFurtherRevisionStandsAfterTheOthersAndLeavesTheQuoteAsItWas() {
        Quote first = quote(List.of(head(1)));
        Quote second = first.with(head(2));
        assertEquals(List.of(head(1)), first.revisions());
        assertEquals(List.of(head(1), head(2)), second.revisions());
        assertEquals(head(2), second.latest());
        assertEquals(Optional.of(head(1)), second.revision(1));
        assertEquals(Optional.empty(), second.revision(3));
        assertEquals(first.id(), second.id());
        assertEquals(first.number(), second.number());
        assertEquals(first.created(), second.created());
    }

    @Test
    void numbersBeginAtOneAndAreWrittenWithSixDigits() {
        assertThrows(IllegalArgumentException.class, () -> new QuoteNumber(0));
        assertEquals("Q-000001", new QuoteNumber(1).text());
        assertEquals("Q-1234567", new QuoteNumber(1_234_567).text());
        assertThrows(IllegalArgumentException.class, () -> head(0));
        assertEquals(1, head(1).number());
    }

    @Test
    void aSearchLooksThroughNumberFrameReferenceAndNotesInSmallLetters() {
        assertEquals("q-000123\nrear bay\ninquiry 7b\nin green", head(1).searched(new QuoteNumber(123)));
    }
}
