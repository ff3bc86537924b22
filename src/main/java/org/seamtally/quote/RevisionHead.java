package org.seamtally.quote;

import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.joda.money.Money;

/**
 * A revision of a quote, its texts left out.
 *
 * @param number 1 for the quote as it was first made
 * @param made when it was made
 * @param engine that worked it out
 * @param priceBook it was priced by; empty where prices were sent
 * @param frame what the customer calls the frame
 * @param total the price
 */
public record RevisionHead(
        int number,
        Instant made,
        ComputedBy engine,
        Terms terms,
        Optional<PricedBy> priceBook,
        Optional<String> frame,
        Money total) {

    /** @throws IllegalArgumentException where the number is not 1 or more */
    public RevisionHead {
        if (number < 1) {
            throw new IllegalArgumentException("revisions are numbered from 1, not " + number);
        }
    }

    /** What a search looks through: one text a line, folded as a search is. */
    public String searched(QuoteNumber quote) {
        return folded(Stream.of(Optional.of(quote.text()), frame, terms.customerReference(), terms.notes())
                .flatMap(Optional::stream)
                .collect(Collectors.joining("\n")));
    }

    /** A text in which large and small letters are alike: folded here and in no database, so that all find the same. */
    public static String folded(String text) {
        return text.toLowerCase(Locale.ROOT);
    }
}
