package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointEstimate;

/** Something to look at, told once for all the joints that it stands on. */
@Schema(
        description =
                "Something to look at before anyone relies on the figures, told once for all joints whose cautions say the"
                        + " same, with the figures of the worst of them.")
public record SharedCautionAnswer(
        @Schema(description = "A stable word.", required = true, examples = "narrow-dihedral")
        String cause,

        @Schema(description = "Plain words; where joints have other figures it says whose these are.", required = true)
        String text,

        @JsonInclude(JsonInclude.Include.NON_EMPTY)
        @Schema(description = "Marks of its joints, in their order; absent where it is the whole frame's.")
        List<String> joints) {

    /** The joints' cautions in the order in which they come up, then the frame's own, as they are shown already. */
    static List<SharedCautionAnswer> of(List<JointEstimate> joints, List<CautionAnswer> ofFrame, Shown shown) {
        Stream<CautionAnswer> ofJoints =
                joints.stream().flatMap(joint -> CautionAnswer.of(joint.cautions(), shown).stream());
        return Stream.concat(
                        GatheredCaution.of(ofJoints).stream()
                                .map(one -> new SharedCautionAnswer(one.cause(), one.text(), one.marks())),
                        ofFrame.stream().map(one -> new SharedCautionAnswer(one.cause(), one.text(), List.of())))
                .toList();
    }
}
