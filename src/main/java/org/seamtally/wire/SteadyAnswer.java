package org.seamtally.wire;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.gas.SteadyState;

/** Gas while it flows steadily. */
@Schema(description = "A set-up while its gas flows steadily.")
public record SteadyAnswer(
        @Schema(description = "Whether even the open meter passes the set flow.", required = true)
        boolean reachable,

        @Schema(
                description = "What flows: the setting, or the greatest flow where it cannot be reached.",
                required = true)
        Quantity flow,

        @Schema(description = "What passes with the meter open.", required = true)
        Quantity greatestFlow,

        @Schema(description = "Gauge pressure along the hose, from its inlet to its end.", required = true)
        List<Place> pressures,

        @Schema(description = "Gauge pressure at the hose's inlet.", required = true)
        Quantity inletGaugePressure,

        @Schema(description = "Gauge pressure behind the orifice, at the torch line's inlet.", required = true)
        Quantity behindOrificeGaugePressure,

        @Schema(
                description = "What the filled hose holds above its flowing state: the bound of the surge.",
                required = true)
        Quantity storedGas,

        @Schema(description = "What the filled hose holds above the outside air's pressure.", required = true)
        Quantity storedAboveAmbient,

        @Schema(description = "Whether the meter's flow does not feel the pressure behind it.", required = true)
        boolean meterChoked,

        @Schema(
                description =
                        "What becomes of a flow set in choked flow when this hose and orifice are put in and the meter"
                                + " is left alone: flow over setting, less 1.",
                required = true)
        double drift,

        @Schema(description = "Whether the setting stands: reachable, and the drift within 5 %.", required = true)
        boolean stands,

        @Schema(description = "Reynolds number in the hose.", required = true)
        double hoseReynolds,

        @Schema(description = "Reynolds number in the gas nozzle; above 2300 air may be drawn in.", required = true)
        double nozzleReynolds) {

    /** Pressure at a place. */
    @Schema(description = "Gauge pressure at a place along the hose.")
    public record Place(
            @Schema(description = "From the hose's inlet.", required = true)
            Quantity position,

            @Schema(description = "There.", required = true) Quantity gaugePressure) {}

    static SteadyAnswer of(SteadyState steady, Shown shown) {
        return new SteadyAnswer(
                steady.reachable(),
                shown.flow(steady.flow()),
                shown.flow(steady.greatestFlow()),
                steady.pressures().stream()
                        .map(p -> new Place(shown.length(p.position()), shown.gauge(p.pressure())))
                        .toList(),
                shown.gauge(steady.inletPressure()),
                shown.gauge(steady.behindOrificePressure()),
                shown.gas(steady.storedGas()),
                shown.gas(steady.storedAboveAmbient()),
                steady.meterChoked(),
                Shown.number(steady.drift()),
                steady.stands(),
                Shown.number(steady.hoseReynolds()),
                Shown.number(steady.nozzleReynolds()));
    }
}
