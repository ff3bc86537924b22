package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Prices;
import org.seamtally.quantity.Dimension;

/** The shop's prices. */
@Schema(
        description = "The shop's prices. What is left out is not priced, and a caution says so; nothing about money is"
                + " assumed.")
public record PricesRequest(
        @NotNull @Word(Words.CURRENCY) @Schema(description = "ISO 4217 code.", examples = "USD")
        Leaf currency,

        @Price(Dimension.TIME)
        @Schema(
                description =
                        "Wage plus on-costs by time; a shop rate that holds overhead already goes with overhead 0.",
                examples = "65.00/h")
        Leaf labour,

        @Price(Dimension.MASS) @Schema(description = "Filler by mass consumed.", examples = "12.50/lb")
        Leaf filler,

        @Price(Dimension.GAS_VOLUME)
        @Schema(description = "Gas by volume at the reference state.", examples = "0.35/ft3")
        Leaf gas,

        @Price(Dimension.ELECTRICITY) @Schema(description = "Electricity by energy.", examples = "0.16/kWh")
        Leaf electricity,

        @Price({Dimension.MASS, Dimension.GAS_VOLUME})
        @Schema(description = "Preheat fuel by mass, or by volume as a gas at 15 degC and 1 atm.", examples = "2.10/lb")
        Leaf fuel,

        @Share(min = "0", max = "3")
        @Schema(description = "Overhead, a share of cost: 0.15 is 15 %.", examples = "0.15")
        Leaf overhead,

        @Share(min = "0", max = "0.9", below = true)
        @Schema(description = "Margin, a share of the price. Not with a markup.", examples = "0.20")
        Leaf margin,

        @Share(min = "0", max = "3")
        @Schema(description = "Markup, a share of cost and overhead. Not with a margin.", examples = "0.25")
        Leaf markup,

        @Share(min = "0", max = "3") @Schema(description = "Rework, a share of cost: 0.03 is 3 %.", examples = "0.03")
        Leaf rework,

        @Sum @Schema(description = "The least that an order is charged.", examples = "250.00")
        Leaf minimumCharge,

        @Size(max = 100) @Schema(description = "Lines of the shop's own, for the whole order.")
        List<@NotNull @Valid OtherWorkRequest> otherWork)
        implements CrossChecked {

    Prices given() {
        return new Prices(
                Words.currency(currency),
                Read.maybe(Read.rate(labour, Dimension.TIME)),
                Read.maybe(Read.rate(filler, Dimension.MASS)),
                Read.maybe(Read.rate(gas, Dimension.GAS_VOLUME)),
                Read.maybe(Read.rate(electricity, Dimension.ELECTRICITY)),
                Read.maybe(Read.rate(fuel, Dimension.MASS, Dimension.GAS_VOLUME)),
                Read.maybe(Read.decimal(overhead)),
                Read.maybe(Read.decimal(margin)),
                Read.maybe(Read.decimal(markup)),
                Read.maybe(Read.decimal(rework)),
                Read.maybe(Read.decimal(minimumCharge)),
                Read.list(otherWork).stream().map(OtherWorkRequest::given).toList());
    }

    /** The same prices with these lines of the shop's own. */
    PricesRequest withOtherWork(List<OtherWorkRequest> lines) {
        return new PricesRequest(
                currency,
                labour,
                filler,
                gas,
                electricity,
                fuel,
                overhead,
                margin,
                markup,
                rework,
                minimumCharge,
                lines);
    }

    @Override
    public void check(Contradictions contradictions) {
        if (margin != null && markup != null) {
            contradictions.add("markup", Violation.Key.CONTRADICTION, "a margin or a markup, not both", markup);
        }
    }
}
