package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.Quote;
import org.seamtally.quote.RevisionHead;

/** A revision of a quote. */
@Schema(description = "A revision of a quote: what was asked, what was answered, and where the other revisions are.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record QuoteAnswer(
        @Schema(description = "The quote's id.", required = true, format = "uuid")
        String id,

        @Schema(
                description = "The quote's number, running within the shop, with gaps.",
                required = true,
                examples = "Q-000123")
        String number,

        @Schema(description = "Which revision this is.", required = true, minimum = "1")
        int revision,

        @Schema(description = "When the quote was first made.", required = true, format = "date-time")
        String created,

        @Schema(description = "When this revision was made.", required = true, format = "date-time")
        String made,

        @Schema(description = "What the customer calls the inquiry.")
        String customerReference,

        @Schema(
                description = "The last day on which the price holds; absent where the quote does not say.",
                format = "date")
        String validUntil,

        @Schema(description = "Words to the customer.") String notes,

        @Schema(description = "The price book it was priced by; absent where prices were sent.")
        PricedByAnswer priceBook,

        @Schema(description = "What was asked.", required = true, implementation = QuoteRequest.class)
        JsonText request,

        @Schema(
                description = "What was answered: a frame estimate with its price.",
                required = true,
                implementation = FrameEstimateAnswer.class)
        JsonText estimate,

        @Schema(description = "All revisions, the first one first.", required = true)
        List<RevisionAnswer> revisions,

        @Schema(description = "What computed the estimate.", required = true)
        EngineAnswer engine) {

    static QuoteAnswer of(Quote quote, RevisionHead head, JsonText request, JsonText estimate) {
        return new QuoteAnswer(
                quote.id().toString(),
                quote.number().text(),
                head.number(),
                quote.created().toString(),
                head.made().toString(),
                head.terms().customerReference().orElse(null),
                head.terms().validUntil().map(Object::toString).orElse(null),
                head.terms().notes().orElse(null),
                head.priceBook().map(PricedByAnswer::of).orElse(null),
                request,
                estimate,
                quote.revisions().stream()
                        .map(revision -> RevisionAnswer.of(quote.id(), revision))
                        .toList(),
                EngineAnswer.of(head.engine()));
    }

    /** A revision told of. */
    @Schema(description = "A revision told of.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record RevisionAnswer(
            @Schema(description = "Its number.", required = true, minimum = "1")
            int revision,

            @Schema(description = "When it was made.", required = true, format = "date-time")
            String made,

            @Schema(description = "The price book it was priced by; absent where prices were sent.")
            PricedByAnswer priceBook,

            @Schema(description = "ISO 4217 code.", required = true, examples = "USD")
            String currency,

            @Schema(description = "The price of the order.", required = true, examples = "1816.30")
            String total,

            @Schema(description = "Where it is.", required = true)
            String href) {

        static RevisionAnswer of(UUID id, RevisionHead head) {
            return new RevisionAnswer(
                    head.number(),
                    head.made().toString(),
                    head.priceBook().map(PricedByAnswer::of).orElse(null),
                    head.total().getCurrencyUnit().getCode(),
                    CostAnswer.amount(head.total()),
                    Hrefs.revision(id, head.number()));
        }
    }
}
