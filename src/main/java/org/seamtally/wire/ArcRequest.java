package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenArc;
import org.seamtally.quantity.Dimension;

/** Arc settings. */
@Schema(description = "How the arc is run.")
public record ArcRequest(
        @Within(value = Dimension.CURRENT, min = "5 A", max = "500 A")
        @Schema(description = "Current. Left out: 1 A per 0.001 in of the thinner wall, at most 200 A.")
        Leaf current,

        @Within(value = Dimension.VOLTAGE, min = "5 V", max = "40 V")
        @Schema(description = "Voltage across the arc. Left out: 11 V.")
        Leaf voltage,

        @Share(min = "0.2", max = "1")
        @Schema(description = "Share of the arc's energy that reaches the work. Left out: 0.67.", examples = "0.67")
        Leaf arcEfficiency,

        @Share(min = "0.02", max = "0.5")
        @Schema(
                description = "Share of that which melts metal; fit it to your own timed welds. Left out: 0.20.",
                examples = "0.20")
        Leaf meltingEfficiency,

        @Within(value = Dimension.SPEED, min = "0.1 mm/s", max = "50 mm/s")
        @Schema(description = "Travel speed. Left out: from the melting balance.")
        Leaf travelSpeed,

        @Within(value = Dimension.SPEED, min = "0.1 mm/s", max = "50 mm/s")
        @Schema(description = "Greatest travel speed that the melting balance may give. Left out: 6 in/min.")
        Leaf maxTravelSpeed,

        @Within(value = Dimension.TIME, min = "0 s", max = "60 s")
        @Schema(description = "Arc time of one tack. Left out: 2 s.", examples = "2 s")
        Leaf tackTime,

        @Share(min = "0.3", max = "1")
        @Schema(description = "Arc power over mains power. Left out: 0.80.", examples = "0.80")
        Leaf powerSourceEfficiency) {

    static GivenArc given(ArcRequest request) {
        return request == null
                ? GivenArc.NONE
                : new GivenArc(
                        Read.quantity(request.current, Dimension.CURRENT),
                        Read.quantity(request.voltage, Dimension.VOLTAGE),
                        Read.number(request.arcEfficiency),
                        Read.number(request.meltingEfficiency),
                        Read.quantity(request.travelSpeed, Dimension.SPEED),
                        Read.quantity(request.maxTravelSpeed, Dimension.SPEED),
                        Read.quantity(request.tackTime, Dimension.TIME),
                        Read.number(request.powerSourceEfficiency));
    }
}
