package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.joda.money.Money;
import org.seamtally.frame.Cost;
import org.seamtally.frame.CostLine;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Rate;

/** The price. */
@Schema(description = "The price of the order. Lines add up to the total to the last cent.")
public record CostAnswer(
        @Schema(description = "ISO 4217 code.", required = true, examples = "USD")
        String currency,

        @Schema(
                description = "\"welding only\" where no other work is priced.",
                required = true,
                examples = "welding only")
        String heading,

        @Schema(description = "Lines for the whole order.", required = true)
        List<Line> lines,

        @Schema(description = "Total over quantity, rounded, for information.", required = true, examples = "302.72")
        String perFrame,

        @Schema(description = "Sum of the lines.", required = true, examples = "1816.30")
        String total) {

    /** One line. */
    @Schema(description = "One line, for the whole order.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Line(
            @Schema(description = "What it is for.", required = true, examples = "labour")
            String item,

            @Schema(description = "In the rate's unit; absent where the line is a share or a sum.")
            Quantity quantity,

            @Schema(description = "Money by a unit, or a share; absent where the line is a sum.", examples = "65.00/h")
            String rate,

            @Schema(description = "Rounded to the currency's minor unit.", required = true, examples = "1236.63")
            String amount) {

        static Line of(CostLine line) {
            return new Line(
                    line.item(),
                    line.quantity().map(Quantity::of).orElse(null),
                    line.rate().orElse(null),
                    CostAnswer.amount(line.amount()));
        }

        /**
         * The quantity as a reader of these units buys it: pounds and cubic feet, or kilograms and cubic metres. Any other is
         * as it was priced.
         */
        public Quantity bought(boolean inches) {
            if (quantity == null) {
                return null;
            }
            if (Dimension.MASS.unitsTaken().contains(quantity.unit())) {
                return bought(Dimension.MASS, inches ? "1/lb" : "1/kg");
            }
            return Dimension.GAS_VOLUME.unitsTaken().contains(quantity.unit())
                    ? bought(Dimension.GAS_VOLUME, inches ? "1/ft3" : "1/m3")
                    : quantity;
        }

        private Quantity bought(Dimension dimension, String rate) {
            double si = dimension.read(BigDecimal.valueOf(quantity.value()).toPlainString() + " " + quantity.unit());
            return Quantity.of(Rate.read(rate, dimension).show(si));
        }
    }

    static CostAnswer of(Cost cost) {
        return new CostAnswer(
                cost.total().getCurrencyUnit().getCode(),
                cost.heading(),
                cost.lines().stream().map(Line::of).toList(),
                amount(cost.perFrame()),
                amount(cost.total()));
    }

    static String amount(Money money) {
        return money.getAmount().toPlainString();
    }
}
