package org.seamtally.wire;

import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;

/** What set-ups are compared under. */
@Schema(description = "The work that set-ups are compared under: starts that are all alike.")
public record DutyRequest(
        @NotNull @Whole(min = 1, max = 100_000) @Schema(description = "Arc starts a shift.", examples = "220")
        Leaf startsPerShift,

        @NotNull
        @Within(value = Dimension.TIME, min = "0.1 s", max = "10 h")
        @Schema(description = "Mean arc time of a start.", examples = "22 s")
        Leaf burnTime,

        @NotNull
        @Within(value = Dimension.TIME, min = "0 s", max = "24 h")
        @Schema(description = "Mean time between two arcs.", examples = "40 s")
        Leaf arcOffTime,

        @NotNull @Whole(min = 1, max = 1100) @Schema(description = "Shifts a year.", examples = "230")
        Leaf shiftsPerYear,

        @Within(value = Dimension.CURRENT, min = "5 A", max = "500 A")
        @Schema(
                description = "Current: it sets the usual post-flow. Needed unless gas.postFlow is given.",
                examples = "90 A")
        Leaf current) {}
