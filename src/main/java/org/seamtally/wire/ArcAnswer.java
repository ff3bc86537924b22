package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.arc.ArcSettings;
import org.seamtally.arc.ArcWork;
import org.seamtally.quantity.Dimension;

/** The arc on one joint. */
@Schema(description = "What the arc does on one joint.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ArcAnswer(
        @Schema(description = "Arc time along the seam, tacks left out.", required = true)
        Quantity time,

        @Schema(description = "Arc time of the tacks.", required = true)
        Quantity tackTime,

        @Schema(description = "Current.", required = true) Quantity current,

        @Schema(description = "Travel speed; absent for a plug.")
        Quantity travelSpeed,

        @Schema(
                description = "What set the arc time: given-speed, melting (the melting balance) or greatest-speed.",
                required = true,
                enumeration = {"given-speed", "melting", "greatest-speed"})
        String ruledBy,

        @Schema(description = "U·I/v, what AWS and ASME call heat input; absent for a plug.")
        Quantity arcEnergy,

        @Schema(description = "Arc efficiency times that; absent for a plug.")
        Quantity heatInput) {

    static ArcAnswer of(ArcWork work, ArcSettings settings, Shown shown) {
        return new ArcAnswer(
                shown.time(work.time()),
                shown.time(work.tackTime()),
                shown.of(Dimension.CURRENT, settings.current()),
                shown.of(Dimension.SPEED, work.travelSpeed()),
                Words.lower(work.ruledBy()).replace('_', '-'),
                shown.of(Dimension.ENERGY_PER_LENGTH, work.arcEnergy()),
                shown.of(Dimension.ENERGY_PER_LENGTH, work.heatInput()));
    }
}
