package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.seamtally.gas.BestOrifice;
import org.seamtally.gas.ComparedSetUp;
import org.seamtally.gas.Verdict;
import org.seamtally.quantity.Dimension;

/** One set-up compared. */
@Schema(description = "One set-up beside the first.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SetUpAnswer(
        @Schema(description = "As it was sent.", required = true)
        String name,

        @Schema(description = "Gas of one start as it repeats itself under the duty.", required = true)
        PerStartAnswer perStart,

        @Schema(description = "All gas of a year.", required = true)
        Quantity perYear,

        @Schema(description = "What starts throw away in a year.", required = true)
        Quantity surgePerYear,

        @Schema(
                description =
                        "Against the first; negative where it takes more; absent where one of the two cannot reach its flow.")
        Quantity savedPerYear,

        @Schema(description = "Money for a year's gas; absent without a gas price.", examples = "2310.40")
        String costPerYear,

        @Schema(
                description = "Money saved a year against the first; negative where it costs more.",
                examples = "412.07")
        String costSavedPerYear,

        @Schema(description = "What it costs to get, as it was sent.", examples = "68.00")
        String price,

        @Schema(
                description =
                        "Starts after which it is paid back; absent where nothing is saved or a price is unknown.")
        Double paybackStarts,

        @Schema(description = "The same in shifts.") Double paybackShifts,

        @Schema(description = "The set-up while its gas flows steadily.", required = true)
        SteadyAnswer steady,

        @Schema(description = "The start on a hose that has filled up: the highest peak there is.", required = true)
        StartAnswer start,

        @Schema(description = "The orifice that damps this hose's start best.", required = true)
        OrificeAnswer bestOrifice,

        @Schema(description = "What to make of it.", required = true)
        VerdictAnswer verdict) {

    /** A verdict with its reasons. */
    @Schema(description = "What to make of a set-up, and why.")
    public record VerdictAnswer(
            @Schema(description = "A stable word.", required = true, examples = "saves")
            String standing,

            @Schema(description = "The verdict as a sentence.", required = true)
            String text,

            @Schema(description = "Its reasons, the deciding one first.", required = true)
            List<String> reasons) {

        static VerdictAnswer of(Verdict verdict) {
            return new VerdictAnswer(
                    Words.lower(verdict.standing()).replace('_', '-'),
                    verdict.words(),
                    verdict.reasons().stream().map(Verdict.Reason::words).toList());
        }
    }

    /** The best orifice. */
    @Schema(description = "The smallest peak whose setting still stands, and the next sizes up.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record OrificeAnswer(
            @Schema(
                    description =
                            "found; none-stands (no orifice does); not-needed (with the meter at the machine a start"
                                    + " throws nothing away).",
                    required = true,
                    enumeration = {"found", "none-stands", "not-needed"})
            String answer,

            @Schema(description = "Where the drift is just what is allowed.")
            Size exact,

            @Schema(description = "The next size up in steps of 0.001 in.")
            Size inch,

            @Schema(description = "The next size up in steps of 0.05 mm.")
            Size metric) {

        /** One size. */
        @Schema(description = "An orifice and what it does.")
        public record Size(
                @Schema(description = "Bore.", required = true)
                Quantity diameter,

                @Schema(description = "Peak flow of a start.", required = true)
                Quantity peakFlow,

                @Schema(description = "Drift of the setting.", required = true)
                double drift) {

            static Size of(BestOrifice.Size size, Shown shown) {
                return new Size(shown.length(size.diameter()), shown.flow(size.peakFlow()), Shown.number(size.drift()));
            }
        }

        static OrificeAnswer of(BestOrifice best, Shown shown) {
            if (best instanceof BestOrifice.Found found) {
                return new OrificeAnswer(
                        "found",
                        Size.of(found.exact(), shown),
                        Size.of(found.inch(), shown),
                        Size.of(found.metric(), shown));
            }
            return new OrificeAnswer(
                    best instanceof BestOrifice.NotNeeded ? "not-needed" : "none-stands", null, null, null);
        }
    }

    static SetUpAnswer of(
            ComparedSetUp setUp,
            BestOrifice orifice,
            double startsPerYear,
            Optional<CurrencyUnit> currency,
            Shown shown) {
        return new SetUpAnswer(
                setUp.name(),
                PerStartAnswer.of(setUp.perStart(), true, shown),
                shown.gas(setUp.volumePerYear()),
                shown.gas(setUp.perStart().startSurge() * startsPerYear),
                shown.of(Dimension.GAS_VOLUME, setUp.savedPerYear()),
                money(setUp.costPerYear(), currency),
                money(setUp.costSavedPerYear(), currency),
                setUp.given().price().map(BigDecimal::toPlainString).orElse(null),
                setUp.paybackStarts().isPresent()
                        ? Shown.number(setUp.paybackStarts().getAsDouble())
                        : null,
                setUp.paybackShifts().isPresent()
                        ? Shown.number(setUp.paybackShifts().getAsDouble())
                        : null,
                SteadyAnswer.of(setUp.steady(), shown),
                StartAnswer.of(setUp.filled(), shown),
                OrificeAnswer.of(orifice, shown),
                VerdictAnswer.of(setUp.verdict()));
    }

    private static String money(Optional<BigDecimal> amount, Optional<CurrencyUnit> currency) {
        return amount.flatMap(a -> currency.map(unit -> CostAnswer.amount(Money.of(unit, a, RoundingMode.HALF_EVEN))))
                .orElse(null);
    }
}
