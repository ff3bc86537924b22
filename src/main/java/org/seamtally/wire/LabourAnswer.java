package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Labour;

/** Paid time. */
@Schema(description = "Paid time.")
public record LabourAnswer(
        @Schema(description = "With the arc on, tacks included.", required = true)
        Quantity arc,

        @Schema(description = "At the joint between arcs.", required = true)
        Quantity handling,

        @Schema(description = "Fitting up.", required = true)
        Quantity fitUp,

        @Schema(description = "Setting the order up, its share.", required = true)
        Quantity setUp,

        @Schema(description = "Heating up (where the source's power is known) and holding.", required = true)
        Quantity preheat,

        @Schema(description = "All of it.", required = true) Quantity total) {

    static LabourAnswer of(Labour labour, Shown shown) {
        return new LabourAnswer(
                shown.time(labour.arc()),
                shown.time(labour.handling()),
                shown.time(labour.fitUp()),
                shown.time(labour.setUp()),
                shown.time(labour.preheat()),
                shown.time(labour.total()));
    }
}
