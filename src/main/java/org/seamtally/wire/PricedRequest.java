package org.seamtally.wire;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.seamtally.quote.KeptPriceBooks;
import org.seamtally.quote.PriceBook;
import org.seamtally.quote.PriceBookName;
import org.seamtally.quote.PriceBookVersion;
import org.seamtally.quote.PricedBy;
import org.seamtally.quote.RevisionHead;

/**
 * A quote's request with the prices that it takes.
 *
 * @param quote as it was asked
 * @param estimate what is estimated, prices and all
 * @param priceBook where they are from; empty where they were sent
 */
record PricedRequest(QuoteRequest quote, FrameEstimateRequest estimate, Optional<PricedBy> priceBook) {

    /** Finds the prices that a request takes at a time: of its price book, the version that is effective then. */
    static PricedRequest at(Instant now, QuoteRequest quote, KeptPriceBooks books, String shop)
            throws RefusedException {
        Optional<PriceBookName> name = quote.book();
        if (name.isEmpty()) {
            return new PricedRequest(quote, quote.estimate(), Optional.empty());
        }
        Optional<PriceBook> book = books.find(shop, name.get());
        if (book.isEmpty()) {
            throw refused(quote, Violation.Key.UNKNOWN_WORD, "there is no such price book");
        }
        Optional<PriceBookVersion> version = book.get().effectiveOn(LocalDate.ofInstant(now, ZoneOffset.UTC));
        if (version.isEmpty()) {
            throw refused(
                    quote,
                    Violation.Key.NOT_EFFECTIVE,
                    "no version of this price book is effective yet; the first one will be on "
                            + book.get().versions().stream()
                                    .map(PriceBookVersion::effective)
                                    .min(LocalDate::compareTo)
                                    .orElseThrow());
        }
        return of(quote, version.get());
    }

    /**
     * Reads what is kept of a revision once more.
     *
     * @throws RefusedException where this engine no longer takes it as it stands
     */
    static PricedRequest again(byte[] request, RevisionHead head, KeptPriceBooks books, String shop)
            throws RefusedException {
        QuoteRequest quote = read(request, QuoteRequest.class);
        if (head.priceBook().isEmpty()) {
            return new PricedRequest(quote, quote.estimate(), Optional.empty());
        }
        PricedBy by = head.priceBook().get();
        return of(
                quote,
                books.find(shop, by.book())
                        .flatMap(book -> book.version(by.version()))
                        .orElseThrow(() -> new IllegalStateException("no version of a price book is ever removed")));
    }

    private static PricedRequest of(QuoteRequest quote, PriceBookVersion version) throws RefusedException {
        return new PricedRequest(
                quote,
                quote.pricedBy(read(version.prices(), PricesRequest.class)),
                Optional.of(new PricedBy(version.book(), version.number(), version.effective())));
    }

    private static <R> R read(byte[] kept, Class<R> type) throws RefusedException {
        try {
            return RequestReader.read(new ByteArrayInputStream(kept), type);
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can always be fetched", e);
        }
    }

    private static RefusedException refused(QuoteRequest quote, String key, String message) {
        return new RefusedException(ProblemReport.invalid(List.of(
                new Violation("priceBook", key, message, quote.priceBook().given(), null))));
    }
}
