package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.FrameEstimate;

/** A frame estimated, in brief: a fraction of the whole answer, for whoever asks at each keystroke. */
@Schema(
        description =
                "A frame estimated, in brief: what the whole estimate says of the frame, a line of each joint, and of"
                        + " one joint all.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FrameTotalsAnswer(
        @Schema(description = "What the customer calls it.") String name,

        @Schema(description = "Frames in the order.", required = true, minimum = "1")
        int quantity,

        @Schema(description = "The joints in brief, in the order sent.", required = true)
        List<JointLineAnswer> joints,

        @Schema(description = "The joint that was asked for, as the whole estimate has it; absent where none was.")
        JointAnswer joint,

        @Schema(description = "What one frame takes.", required = true)
        TotalsAnswer perFrame,

        @Schema(description = "What the order takes.", required = true)
        TotalsAnswer forQuantity,

        @Schema(description = "Where the gas goes.", required = true)
        FrameEstimateAnswer.Shares gasShares,

        @Schema(description = "The price; absent where no prices were sent.")
        CostAnswer cost,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at: the joints' cautions and the frame's.", required = true)
        List<SharedCautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {

    /** @param joint the one in full; null for none */
    static FrameTotalsAnswer of(FrameEstimate estimate, JointAnswer joint, Shown shown, EngineAnswer engine) {
        // what is said of the frame is said by one place: the whole answer's, of no joints
        FrameEstimateAnswer frame = FrameEstimateAnswer.of(estimate, List.of(), shown, engine);
        return new FrameTotalsAnswer(
                frame.name(),
                frame.quantity(),
                estimate.joints().stream()
                        .map(one -> JointLineAnswer.of(one, shown))
                        .toList(),
                joint,
                frame.perFrame(),
                frame.forQuantity(),
                frame.gasShares(),
                frame.cost(),
                frame.assumptions(),
                frame.basis(),
                SharedCautionAnswer.of(estimate.joints(), frame.cautions(), shown),
                frame.engine());
    }
}
