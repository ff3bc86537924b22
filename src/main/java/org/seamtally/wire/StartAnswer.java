package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.gas.StartTransient;
import org.seamtally.quantity.Dimension;

/** A start. */
@Schema(description = "What comes out of the torch when the valve opens on a filled hose.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record StartAnswer(
        @Schema(description = "Highest flow, the first instant's: a model value, ± 50 %.", required = true)
        Quantity peakFlow,

        @Schema(description = "Net surge until the flow is steady.", required = true)
        Quantity netSurge,

        @Schema(description = "Until the flow stays within 5 % of the setting.", required = true)
        Quantity timeWithin5Percent,

        @Schema(description = "Greatest Reynolds number in the gas nozzle.", required = true)
        double peakNozzleReynolds,

        @Schema(description = "Time above Re 2300 in the nozzle; absent where it never ends.")
        Quantity turbulentTime,

        @Schema(description = "Volume that flows in that time; absent where it never ends.")
        Quantity turbulentVolume,

        @Schema(
                description = "Flow over time, dense where it changes fast, until within 1 % of the setting.",
                required = true)
        List<Point> curve) {

    /** Flow at a time. */
    @Schema(description = "Flow at a time.")
    public record Point(
            @Schema(description = "From the valve's opening.", required = true)
            Quantity time,

            @Schema(description = "Flow at the reference state.", required = true)
            Quantity flow) {}

    static StartAnswer of(StartTransient start, Shown shown) {
        return new StartAnswer(
                shown.flow(start.peakFlow()),
                shown.gas(start.netSurge()),
                shown.time(start.timeWithin5Percent()),
                Shown.number(start.peakNozzleReynolds()),
                shown.of(Dimension.TIME, start.turbulentTime()),
                shown.of(Dimension.GAS_VOLUME, start.turbulentVolume()),
                start.curve().stream()
                        .map(p -> new Point(shown.time(p.time()), shown.flow(p.flow())))
                        .toList());
    }
}
