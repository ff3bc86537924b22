package org.seamtally.wire;

import jakarta.validation.Valid;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;

/** One set-up whose losses are asked for. */
@Schema(
        description =
                "One set-up. With a joint, the answer adds what that joint's starts take. Nothing is needed: what is"
                        + " left out is taken as in a frame estimate.")
public record GasLossRequest(
        @Valid @Schema(description = "Shielding gas and its way to the arc.")
        GasRequest gas,

        @Valid @Schema(description = "How the arc is run; the current sets the usual post-flow.")
        ArcRequest arc,

        @Within(value = Dimension.TIME, min = "0.1 s", max = "10 h")
        @Schema(description = "Arc time of one start. Left out: until the flow is steady.", examples = "22 s")
        Leaf burnTime,

        @Within(value = Dimension.TIME, min = "0 s", max = "24 h")
        @Schema(
                description = "Time between two arcs, in which the hose fills up again. Left out: it fills up fully.",
                examples = "40 s")
        Leaf arcOffTime,

        @Valid @Schema(description = "A joint to be welded with this set-up.")
        JointRequest joint) {}
