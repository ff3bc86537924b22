package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointEstimate;

/** One joint of an estimate. */
@Schema(description = "What one joint takes; figures are for one of its kind, the frame has `count` of them.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record JointAnswer(
        @Schema(description = "What the drawing calls it.", required = true, examples = "R1")
        String mark,

        @Schema(description = "How many of them the frame has.", required = true, minimum = "1")
        int count,

        @Schema(description = "Kind of joint.", required = true, examples = "tube-to-tube")
        String kind,

        @Schema(description = "Reference of the qualified procedure, as it was sent.")
        String procedure,

        @Schema(description = "Tack welds.", required = true, minimum = "0")
        int tacks,

        @Schema(description = "Arc-on stretches.", required = true, minimum = "1")
        int segments,

        @Schema(description = "What is welded, set and picked up, defaults filled in.", required = true)
        SettingsAnswer settings,

        @Schema(description = "The seam.", required = true) SeamAnswer seam,
        @Schema(description = "Filler.", required = true) FillerAnswer filler,
        @Schema(description = "The arc.", required = true) ArcAnswer arc,
        @Schema(description = "Gas.", required = true) GasAnswer gas,

        @Schema(description = "Preheat; absent where there is none.")
        PreheatAnswer preheat,

        @Schema(description = "The fillet against the code's rule; absent for a plug.")
        FilletAnswer fillet,

        @Schema(
                description =
                        "What a preheat that is advised, and not asked for, would take; it is in no total. Absent where"
                                + " none is advised or the joint is preheated.")
        AdvisedPreheatAnswer preheatAdvice,

        @Schema(description = "What to look at on this joint.", required = true)
        List<CautionAnswer> cautions) {

    static JointAnswer of(JointEstimate joint, String kind, Shown shown) {
        return new JointAnswer(
                joint.mark(),
                joint.count(),
                kind,
                joint.procedure().orElse(null),
                joint.tacks(),
                joint.segments(),
                SettingsAnswer.of(joint, shown),
                SeamAnswer.of(joint.seam(), shown),
                FillerAnswer.of(joint.filler(), shown),
                ArcAnswer.of(joint.arc(), joint.settings(), shown),
                GasAnswer.of(joint.gas(), joint.storedGas() * joint.gas().starts(), shown),
                joint.preheat()
                        .map(use -> PreheatAnswer.of(
                                use, joint.welder().preheat().orElseThrow().source(), shown))
                        .orElse(null),
                joint.fillet().map(fillet -> FilletAnswer.of(fillet, shown)).orElse(null),
                joint.advisedPreheat()
                        .map(advised -> AdvisedPreheatAnswer.of(advised, shown))
                        .orElse(null),
                CautionAnswer.of(joint.cautions(), shown));
    }
}
