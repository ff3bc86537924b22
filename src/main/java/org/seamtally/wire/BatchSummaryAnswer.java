package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.FrameCautions;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.UnitSystem;

/** What the frames of a batch add up to. */
@Schema(
        description = "What the frames of a batch that are estimated so far add up to, each for its whole order. Gas"
                + " volumes stand at their own frames' reference temperatures.")
public record BatchSummaryAnswer(
        @Schema(description = "The batch.", required = true) BatchAnswer batch,

        @Schema(description = "Length and deposit of all seams.", required = true)
        TotalsAnswer.Lengths seam,

        @Schema(description = "Filler.", required = true) Filler filler,

        @Schema(description = "Arc time and electricity.", required = true)
        TotalsAnswer.Arcs arc,

        @Schema(description = "Gas by where it goes.", required = true)
        Gas gas,

        @Schema(description = "Preheat.", required = true) Preheat preheat,

        @Schema(description = "Paid time.", required = true) LabourAnswer labour,

        @Schema(description = "Prices by currency.", required = true)
        List<Money> money,

        @Schema(
                description = "The frames with the highest prices, the dearest first, at most 10 a currency.",
                required = true)
        List<Dear> dearest,

        @Schema(description = "What no figure here says.", required = true)
        List<CautionAnswer> cautions) {

    /** Filler of all frames. */
    @Schema(description = "Filler of all frames.")
    public record Filler(
            @Schema(description = "Mass deposited.", required = true)
            Quantity mass,

            @Schema(description = "Mass bought for it: stubs and losses included.", required = true)
            Quantity consumed) {}

    /** Gas of all frames. */
    @Schema(description = "Gas of all frames by where it goes.")
    public record Gas(
            @Schema(description = "While the arc burns, tacks included.", required = true)
            Quantity arc,

            @Schema(description = "Before each arc.", required = true)
            Quantity preFlow,

            @Schema(description = "Thrown away above the setting at starts.", required = true)
            Quantity startSurge,

            @Schema(description = "After each arc.", required = true)
            Quantity postFlow,

            @Schema(description = "Through the inside of the tube.", required = true)
            Quantity backPurge,

            @Schema(description = "Lost to leaks.", required = true)
            Quantity leak,

            @Schema(description = "All of it.", required = true)
            Quantity total,

            @Schema(description = "Start surge and leaks together: wasted.", required = true)
            Quantity surgeAndLeak,

            @Schema(
                    description = "Share of the total that is wasted; 0 where there is no gas.",
                    required = true,
                    minimum = "0",
                    maximum = "1")
            double surgeAndLeakShare) {}

    /** Preheat of all frames. */
    @Schema(description = "Preheat of all frames.")
    public record Preheat(
            @Schema(description = "Heat stored in the steel.", required = true)
            Quantity content,

            @Schema(description = "Energy supplied.", required = true)
            Quantity energy,

            @Schema(description = "Mass of fuel, of all fuels together.", required = true)
            Quantity fuel,

            @Schema(description = "Electricity.", required = true)
            Quantity electricity) {}

    /** A sum of money. */
    @Schema(description = "What all orders in one currency come to.")
    public record Money(
            @Schema(description = "ISO 4217 code.", required = true, examples = "USD")
            String currency,

            @Schema(description = "Sum of the orders' totals.", required = true, examples = "181630.00")
            String total) {}

    /** A frame by its price. */
    @Schema(description = "A frame by its price.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Dear(
            @Schema(description = "Line of the file that it starts in.", required = true, minimum = "1")
            long line,

            @Schema(description = "What the customer calls it.")
            String name,

            @Schema(description = "ISO 4217 code.", required = true, examples = "USD")
            String currency,

            @Schema(description = "Its order's total.", required = true, examples = "1816.30")
            String total) {}

    /**
     * A batch's summary.
     *
     * @param units of the amounts
     */
    public static BatchSummaryAnswer of(BatchAnswer batch, JobTotals totals, UnitSystem units) {
        Sums sums = new Sums(totals, units);
        return new BatchSummaryAnswer(
                batch,
                new TotalsAnswer.Lengths(
                        sums.of("seam.length", Dimension.LENGTH), sums.of("seam.depositVolume", Dimension.VOLUME)),
                new Filler(sums.of("filler.mass", Dimension.MASS), sums.of("filler.consumed", Dimension.MASS)),
                new TotalsAnswer.Arcs(
                        sums.of("arc.time", Dimension.TIME),
                        sums.of("arc.tackTime", Dimension.TIME),
                        sums.of("arc.energy", Dimension.ELECTRICITY)),
                gas(sums),
                new Preheat(
                        sums.of("preheat.content", Dimension.ENERGY),
                        sums.of("preheat.energy", Dimension.ENERGY),
                        sums.of("preheat.fuel", Dimension.MASS),
                        sums.of("preheat.electricity", Dimension.ELECTRICITY)),
                new LabourAnswer(
                        sums.of("labour.arc", Dimension.TIME),
                        sums.of("labour.handling", Dimension.TIME),
                        sums.of("labour.fitUp", Dimension.TIME),
                        sums.of("labour.setUp", Dimension.TIME),
                        sums.of("labour.preheat", Dimension.TIME),
                        sums.of("labour.total", Dimension.TIME)),
                totals.money().entrySet().stream()
                        .map(sum -> new Money(sum.getKey(), sum.getValue().toPlainString()))
                        .toList(),
                totals.dearest().stream()
                        .map(dear -> new Dear(
                                dear.line(),
                                dear.name(),
                                dear.currency(),
                                dear.total().toPlainString()))
                        .toList(),
                CautionAnswer.of(FrameCautions.always(), new Shown(units)));
    }

    private static Gas gas(Sums sums) {
        Dimension volume = Dimension.GAS_VOLUME;
        return new Gas(
                sums.of("gas.arc", volume),
                sums.of("gas.preFlow", volume),
                sums.of("gas.startSurge", volume),
                sums.of("gas.postFlow", volume),
                sums.of("gas.backPurge", volume),
                sums.of("gas.leak", volume),
                sums.of("gas.total", volume),
                sums.of(volume, "gas.startSurge", "gas.leak"),
                sums.share("gas.total", "gas.startSurge", "gas.leak"));
    }
}
