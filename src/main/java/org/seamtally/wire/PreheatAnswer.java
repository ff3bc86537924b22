package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.preheat.HeatSource;
import org.seamtally.preheat.PreheatUse;
import org.seamtally.quantity.Dimension;

/** Preheat of one joint. */
@Schema(description = "What preheating one joint takes.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PreheatAnswer(
        @Schema(description = "Heat stored in the zone's steel.", required = true)
        Quantity content,

        @Schema(description = "Heat given off while at temperature.", required = true)
        Quantity losses,

        @Schema(description = "Energy supplied by the source.", required = true)
        Quantity energy,

        @Schema(description = "Fuel or electricity.", required = true, examples = "propane")
        String source,

        @Schema(description = "Mass of fuel; absent where the source is electricity.")
        Quantity fuel,

        @Schema(description = "Heat-up (where the source's power is known) and hold.", required = true)
        Quantity time) {

    static PreheatAnswer of(PreheatUse use, HeatSource source, Shown shown) {
        return new PreheatAnswer(
                shown.energy(use.content()),
                shown.of(Dimension.POWER, use.losses()),
                shown.energy(use.energy()),
                source.name(),
                shown.of(Dimension.MASS, use.fuelMass()),
                shown.time(use.time()));
    }
}
