package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Totals;
import org.seamtally.quantity.Dimension;

/** Totals of a frame or an order. */
@Schema(description = "Totals.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record TotalsAnswer(
        @Schema(description = "Length and deposit.", required = true)
        Lengths seam,

        @Schema(description = "Number of plugs.", required = true, minimum = "0")
        long plugs,

        @Schema(
                description = "Filler; for the order the rods are whole, all of them counted as of one kind.",
                required = true)
        FillerAnswer filler,

        @Schema(description = "Arc time and electricity.", required = true)
        Arcs arc,

        @Schema(description = "Gas.", required = true) GasAnswer gas,

        @Schema(description = "Preheat; absent where there is none.")
        Heat preheat,

        @Schema(description = "Paid time.", required = true) LabourAnswer labour) {

    /** Length and deposit of all seams. */
    @Schema(description = "Length and deposit of all seams.")
    public record Lengths(
            @Schema(description = "Length of the root lines, plugs left out.", required = true)
            Quantity length,

            @Schema(description = "Volume deposited, plugs included.", required = true)
            Quantity depositVolume) {}

    /** Arc time and electricity. */
    @Schema(description = "Arc time and electricity.")
    public record Arcs(
            @Schema(description = "Arc time along the seams, tacks left out.", required = true)
            Quantity time,

            @Schema(description = "Arc time of the tacks.", required = true)
            Quantity tackTime,

            @Schema(description = "Electricity that the power source draws.", required = true)
            Quantity energy) {}

    /** Preheat of all joints. */
    @Schema(description = "Preheat of all joints.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Heat(
            @Schema(description = "Heat stored in the steel.", required = true)
            Quantity content,

            @Schema(description = "Energy supplied.", required = true)
            Quantity energy,

            @Schema(description = "Mass of fuel, of all fuels together; absent where none is burned.")
            Quantity fuel,

            @Schema(description = "Electricity; absent where none heats.")
            Quantity electricity) {

        static Heat of(Totals totals, Shown shown) {
            if (totals.preheatEnergy() == 0) {
                return null;
            }
            double fuel = totals.preheatFuel().values().stream()
                    .mapToDouble(Double::doubleValue)
                    .sum();
            return new Heat(
                    shown.energy(totals.preheatContent()),
                    shown.energy(totals.preheatEnergy()),
                    fuel > 0 ? shown.mass(fuel) : null,
                    totals.preheatElectricity() > 0
                            ? shown.of(Dimension.ELECTRICITY, totals.preheatElectricity())
                            : null);
        }
    }

    static TotalsAnswer of(Totals totals, double rods, Shown shown) {
        return new TotalsAnswer(
                new Lengths(shown.length(totals.seamLength()), shown.volume(totals.depositVolume())),
                totals.plugs(),
                FillerAnswer.of(totals.filler(), rods, shown),
                new Arcs(
                        shown.time(totals.arcTime()),
                        shown.time(totals.tackTime()),
                        shown.of(Dimension.ELECTRICITY, totals.electricity())),
                GasAnswer.of(totals.gas(), totals.storedGas(), shown),
                Heat.of(totals, shown),
                LabourAnswer.of(totals.labour(), shown));
    }
}
