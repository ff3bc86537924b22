package org.seamtally.wire;

import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.gas.BackPurge;
import org.seamtally.quantity.Dimension;

/** Gas inside the tube. */
@Schema(description = "Gas led through the inside of the tube: flow × (purge time + arc time).")
public record BackPurgeRequest(
        @NotNull
        @Within(value = Dimension.FLOW, min = "0.1 L/min", max = "100 L/min")
        @Schema(description = "Flow at the reference state.")
        Leaf flow,

        @NotNull
        @Within(value = Dimension.TIME, min = "0 s", max = "2 h")
        @Schema(description = "Time purged before the arc starts.", examples = "2 min")
        Leaf time) {

    BackPurge given() {
        return new BackPurge(Read.quantity(flow, Dimension.FLOW), Read.quantity(time, Dimension.TIME));
    }
}
