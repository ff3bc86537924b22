package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.metal.CoolingRate;
import org.seamtally.metal.CoolingTime;
import org.seamtally.quantity.Dimension;

/** How a seam cools. */
@Schema(description = "How long the seam takes from 800 to 500 degC, by EN 1011-2 annex D.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record CoolingAnswer(
        @Schema(description = "t8/5: the longer of thin and thick.", required = true)
        Quantity t85,

        @Schema(description = "t8/5 with the least shape factor of a fillet: the fast bound.", required = true)
        Quantity fastBound,

        @Schema(description = "By two-dimensional heat flow.", required = true)
        Quantity thin,

        @Schema(description = "By three-dimensional heat flow.", required = true)
        Quantity thick,

        @Schema(description = "Wall at which the two meet.", required = true)
        Quantity transitionThickness,

        @Schema(
                description = "Which flow holds.",
                required = true,
                enumeration = {"thin", "thick"})
        String regime,

        @Schema(description = "Cooling rate on the centreline at 700 degC, by Adams; absent after preheat.")
        Quantity rateAt700,

        @Schema(description = "Cooling rate on the centreline at 540 degC, by Adams; absent after preheat.")
        Quantity rateAt540) {

    static CoolingAnswer of(CoolingTime time, CoolingRate rate, Shown shown) {
        return new CoolingAnswer(
                shown.time(time.time()),
                shown.time(time.fastest()),
                shown.time(time.thin()),
                shown.time(time.thick()),
                shown.length(time.transitionThickness()),
                Words.lower(time.regime()),
                rate == null ? null : shown.of(Dimension.COOLING_RATE, rate.at700()),
                rate == null ? null : shown.of(Dimension.COOLING_RATE, rate.at540()));
    }
}
