package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.joda.money.Money;
import org.seamtally.frame.Cost;
import org.seamtally.frame.CostLine;

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
