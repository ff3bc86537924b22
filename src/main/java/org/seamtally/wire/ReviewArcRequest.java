package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenArc;
import org.seamtally.quantity.Dimension;

/** The arc along a seam whose metal is reviewed. */
@Schema(description = "The arc along the seam, as far as the metal asks.")
public record ReviewArcRequest(
        @Within(value = Dimension.CURRENT, min = "5 A", max = "500 A")
        @Schema(description = "Current. Left out: 1 A per 0.001 in of the wall, at most 200 A.")
        Leaf current,

        @Within(value = Dimension.VOLTAGE, min = "5 V", max = "40 V")
        @Schema(description = "Voltage across the arc. Left out: 11 V.")
        Leaf voltage,

        @Within(value = Dimension.SPEED, min = "0.1 mm/s", max = "50 mm/s")
        @Schema(
                description =
                        "Travel speed. Left out: 6 in/min, the greatest by hand, which puts in the least heat: the careful"
                                + " side for hardness and preheat.")
        Leaf travelSpeed,

        @Share(min = "0.2", max = "1")
        @Schema(
                description =
                        "Share of the arc's energy that reaches the work, for the heat input shown. Left out: 0.67."
                                + " The cooling and preheat formulas of EN 1011-2 take their own 0.6, whatever stands here.",
                examples = "0.67")
        Leaf arcEfficiency) {

    static GivenArc given(ReviewArcRequest request) {
        return request == null
                ? GivenArc.NONE
                : new GivenArc(
                        Read.quantity(request.current, Dimension.CURRENT),
                        Read.quantity(request.voltage, Dimension.VOLTAGE),
                        Read.number(request.arcEfficiency),
                        null,
                        Read.quantity(request.travelSpeed, Dimension.SPEED),
                        null,
                        null,
                        null);
    }
}
