package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointEstimate;

/** One joint of an estimate in brief. */
@Schema(
        description =
                "A joint in brief: what a list of joints shows. Figures are for one of its kind, the frame has `count`"
                        + " of them.")
public record JointLineAnswer(
        @Schema(description = "What the drawing calls it.", required = true, examples = "R1")
        String mark,

        @Schema(description = "How many of them the frame has.", required = true, minimum = "1")
        int count,

        @Schema(description = "Length of the root line; 0 for a plug.", required = true)
        Quantity seamLength,

        @Schema(description = "Filler bought: stubs and losses included.", required = true)
        Quantity filler,

        @Schema(description = "Arc-on time, tacks left out.", required = true)
        Quantity arcTime,

        @Schema(description = "Gas, all of it.", required = true)
        Quantity gas) {

    static JointLineAnswer of(JointEstimate joint, Shown shown) {
        return new JointLineAnswer(
                joint.mark(),
                joint.count(),
                shown.length(joint.seam().length()),
                shown.mass(joint.filler().consumed()),
                shown.time(joint.arc().time()),
                shown.gas(joint.gas().total()));
    }
}
