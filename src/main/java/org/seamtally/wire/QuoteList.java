package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.Quote;
import org.seamtally.quote.RevisionHead;

/** Quotes, the latest one first. */
@Schema(description = "Quotes, the highest number first, each by its latest revision.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record QuoteList(
        @Schema(description = "The quotes of this stretch.", required = true)
        List<Item> items,

        @Schema(description = "What to send as after for the next stretch; absent at the list's end.", format = "uuid")
        String next) {

    /** A quote by its latest revision. */
    @Schema(description = "A quote by its latest revision.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Item(
            @Schema(description = "The quote's id.", required = true, format = "uuid")
            String id,

            @Schema(description = "The quote's number.", required = true, examples = "Q-000123")
            String number,

            @Schema(description = "Its latest revision.", required = true, minimum = "1")
            int revision,

            @Schema(description = "When the quote was first made.", required = true, format = "date-time")
            String created,

            @Schema(description = "When its latest revision was made.", required = true, format = "date-time")
            String made,

            @Schema(description = "What the customer calls the frame.")
            String frame,

            @Schema(description = "What the customer calls the inquiry.")
            String customerReference,

            @Schema(
                    description = "The last day on which the price holds; absent where the quote does not say.",
                    format = "date")
            String validUntil,

            @Schema(description = "ISO 4217 code.", required = true, examples = "USD")
            String currency,

            @Schema(description = "The price of the order.", required = true, examples = "1816.30")
            String total,

            @Schema(description = "Where it is.", required = true)
            String href) {

        static Item of(Quote quote) {
            RevisionHead latest = quote.latest();
            return new Item(
                    quote.id().toString(),
                    quote.number().text(),
                    latest.number(),
                    quote.created().toString(),
                    latest.made().toString(),
                    latest.frame().orElse(null),
                    latest.terms().customerReference().orElse(null),
                    latest.terms().validUntil().map(Object::toString).orElse(null),
                    latest.total().getCurrencyUnit().getCode(),
                    CostAnswer.amount(latest.total()),
                    Hrefs.quote(quote.id()));
        }
    }
}
