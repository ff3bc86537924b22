package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.joda.money.Money;
import org.seamtally.quote.LineChange;
import org.seamtally.quote.PriceMove;
import org.seamtally.quote.PricedLine;
import org.seamtally.quote.Quote;

/** What moved a quote's price. */
@Schema(description = "What moved a quote's price from one revision to another. All money adds up to the last cent.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DifferenceAnswer(
        @Schema(description = "The quote's id.", required = true, format = "uuid")
        String id,

        @Schema(description = "The quote's number.", required = true, examples = "Q-000123")
        String number,

        @Schema(description = "The revision compared with.", required = true)
        SideAnswer from,

        @Schema(description = "The revision compared.", required = true)
        SideAnswer to,

        @Schema(
                description = "Change of the total, with its sign; absent where the currencies differ.",
                examples = "-12.40")
        String change,

        @Schema(
                description = "The lines of the price side by side; their changes add up to that of the total.",
                required = true)
        List<LineAnswer> lines,

        @Schema(description = "What moved the price, one after the other; absent where that cannot be said.")
        MovedAnswer moved,

        @Schema(
                description =
                        "Why it cannot be said what moved the price: other-currency, other-engine (the later revision"
                                + " was worked out by another engine than this), or not-taken (this engine no longer takes one of"
                                + " the requests).",
                examples = "other-engine")
        String notMoved,

        @Schema(
                description =
                        "Fields of the request that differ, prices of a price book among them; joints are told apart"
                                + " by their marks.",
                required = true)
        List<FieldChange> fields,

        @Schema(description = "What compared them.", required = true)
        EngineAnswer engine) {

    /** One of the two revisions. */
    @Schema(description = "One of the two revisions.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record SideAnswer(
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

            @Schema(description = "What computed it.", required = true)
            EngineAnswer engine) {}

    /** A line of the price in both. */
    @Schema(description = "A line of the price in both revisions.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record LineAnswer(
            @Schema(description = "What it is for.", required = true, examples = "labour")
            String item,

            @Schema(description = "As it was; absent where it was added.")
            CostAnswer.Line from,

            @Schema(description = "As it is; absent where it was taken away.")
            CostAnswer.Line to,

            @Schema(description = "Change, with its sign; absent where the currencies differ.", examples = "-12.40")
            String change) {

        static LineAnswer of(LineChange line, boolean oneCurrency) {
            return new LineAnswer(
                    line.item(),
                    line.from().map(LineAnswer::line).orElse(null),
                    line.to().map(LineAnswer::line).orElse(null),
                    oneCurrency ? line.change().map(CostAnswer::amount).orElse(null) : null);
        }

        private static CostAnswer.Line line(PricedLine line) {
            return new CostAnswer.Line(
                    line.item(),
                    line.quantity()
                            .map(quantity -> new Quantity(quantity.value(), quantity.unit()))
                            .orElse(null),
                    line.rate().orElse(null),
                    CostAnswer.amount(line.amount()));
        }
    }

    /** What moved the price. */
    @Schema(
            description =
                    "What moved the price, one after the other: together they are the change of the total. In another"
                            + " order each could be another sum, since prices and work multiply.")
    public record MovedAnswer(
            @Schema(
                    description = "The engine: the earlier request, worked out by this one.",
                    required = true,
                    examples = "0.00")
            String engine,

            @Schema(
                    description = "The work: the later frame, quantity and settings at the earlier prices.",
                    required = true,
                    examples = "-20.15")
            String work,

            @Schema(description = "The later lines of the shop's own.", required = true, examples = "0.00")
            String otherWork,

            @Schema(
                    description = "Prices: the later rates, shares and least charge.",
                    required = true,
                    examples = "7.75")
            String prices) {

        static MovedAnswer of(PriceMove move) {
            return new MovedAnswer(
                    CostAnswer.amount(move.engine()),
                    CostAnswer.amount(move.work()),
                    CostAnswer.amount(move.otherWork()),
                    CostAnswer.amount(move.prices()));
        }
    }

    static String change(Money from, Money to) {
        return from.isSameCurrency(to) ? CostAnswer.amount(to.minus(from)) : null;
    }

    static DifferenceAnswer of(
            Quote quote,
            SideAnswer from,
            SideAnswer to,
            String change,
            List<LineChange> lines,
            RevisionDifference.Moved moved,
            List<FieldChange> fields,
            EngineAnswer engine) {
        return new DifferenceAnswer(
                quote.id().toString(),
                quote.number().text(),
                from,
                to,
                change,
                lines.stream().map(line -> LineAnswer.of(line, change != null)).toList(),
                moved.move().map(MovedAnswer::of).orElse(null),
                moved.why().orElse(null),
                fields,
                engine);
    }
}
