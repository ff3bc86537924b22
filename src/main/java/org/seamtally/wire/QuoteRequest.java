package org.seamtally.wire;

import com.fasterxml.jackson.databind.annotation.JsonDeserialize;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.PriceBookName;
import org.seamtally.quote.Terms;

/** A quote to be kept: a frame estimate's request and what a quote says besides. */
@Schema(
        description =
                "A quote to be kept: the fields of a frame estimate's request, and what a quote says besides. It is"
                        + " priced by a price book or by prices of its own.")
@JsonDeserialize(using = QuoteRequest.Reader.class)
public record QuoteRequest(
        @Beside @Valid FrameEstimateRequest estimate,

        @Text(max = 200)
        @Schema(description = "What the customer calls the inquiry.", examples = "Inquiry 2231, rear bay")
        Leaf customerReference,

        @Date
        @Schema(
                description =
                        "The last day on which the price holds, not before today. Left out: the quote does not say.",
                examples = Date.EXAMPLE)
        Leaf validUntil,

        @Text(max = 4000, lines = true)
        @Schema(description = "Words to the customer.", examples = "Tubes come coped and clean.")
        Leaf notes,

        @Text(max = PriceBookName.LONGEST)
        @Schema(
                description = "Name of the price book whose version of today prices the quote, instead of prices.",
                examples = "Shop floor")
        Leaf priceBook,

        @Size(max = 100)
        @Schema(description = "Lines of this order's own, after those of the price book. With prices they go in there.")
        List<@NotNull @Valid OtherWorkRequest> otherWork)
        implements CrossChecked {

    /** Reads it. */
    static final class Reader extends BesideReader<QuoteRequest> {

        private static final long serialVersionUID = 1;

        Reader() {
            super(QuoteRequest.class);
        }
    }

    Terms terms() {
        return new Terms(
                Read.maybe(Read.text(customerReference)),
                Read.maybe(Read.tryDate(validUntil)),
                Read.maybe(Read.text(notes)));
    }

    /** The price book's name; empty where it brings prices of its own. */
    Optional<PriceBookName> book() {
        return Read.maybe(priceBook).map(Leaf::text).map(PriceBookName::new);
    }

    /** What is estimated, with a price book's prices in place of its own. */
    FrameEstimateRequest pricedBy(PricesRequest book) {
        return new FrameEstimateRequest(
                estimate.frame(),
                estimate.steel(),
                estimate.filler(),
                estimate.arc(),
                estimate.gas(),
                estimate.preheat(),
                estimate.labour(),
                book.withOtherWork(Stream.concat(Read.list(book.otherWork()).stream(), Read.list(otherWork).stream())
                        .toList()));
    }

    @Override
    public void check(Contradictions contradictions) {
        boolean priced = estimate.prices() != null;
        if (priceBook == null && !priced) {
            contradictions.add(
                    "priceBook", Violation.Key.MISSING, "a quote has a price: name a price book, or send prices", null);
        }
        if (priceBook != null && priced) {
            contradictions.add("priceBook", Violation.Key.CONTRADICTION, "a price book or prices, not both", priceBook);
        }
        if (priceBook != null && (priceBook.kind() != Leaf.Kind.TEXT || !PriceBookName.isName(priceBook.text()))) {
            contradictions.add(
                    "priceBook",
                    Violation.Key.NOT_TEXT,
                    "a price book's name is due: " + PriceBookName.TAKEN,
                    priceBook);
        }
        if (otherWork != null && priced) {
            contradictions.add(
                    "otherWork", Violation.Key.CONTRADICTION, "beside prices it goes into prices.otherWork", null);
        }
    }
}
