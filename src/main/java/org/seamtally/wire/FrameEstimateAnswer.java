package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.FrameEstimate;
import org.seamtally.gas.GasUse;

/** A frame estimated. */
@Schema(description = "A frame estimated: per joint, per frame, for the order, and priced where prices were sent.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FrameEstimateAnswer(
        @Schema(description = "What the customer calls it.") String name,

        @Schema(description = "Frames in the order.", required = true, minimum = "1")
        int quantity,

        @Schema(description = "The joints, in the order sent.", required = true)
        List<JointAnswer> joints,

        @Schema(description = "What one frame takes.", required = true)
        TotalsAnswer perFrame,

        @Schema(description = "What the order takes.", required = true)
        TotalsAnswer forQuantity,

        @Schema(description = "Where the gas goes.", required = true)
        Shares gasShares,

        @Schema(description = "The price; absent where no prices were sent.")
        CostAnswer cost,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at: the frame's cautions; each joint has its own.", required = true)
        List<CautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {

    // answers gain fields: a newer program's are passed over
    private static final JsonMapper KEPT = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    /** Shares of the gas. */
    @Schema(description = "Shares of the gas used, together 1.")
    public record Shares(
            @Schema(
                    description = "While the arc burns and through the tube.",
                    required = true,
                    minimum = "0",
                    maximum = "1")
            double welding,

            @Schema(
                    description = "Before and after: needed, they shield tungsten and crater.",
                    required = true,
                    minimum = "0",
                    maximum = "1")
            double preAndPostFlow,

            @Schema(description = "Start surge and leaks: wasted.", required = true, minimum = "0", maximum = "1")
            double surgeAndLeak) {

        static Shares of(GasUse use) {
            GasUse.Shares shares = use.shares();
            return new Shares(
                    Shown.number(shares.welding()),
                    Shown.number(shares.preAndPostFlow()),
                    Shown.number(shares.surgeAndLeak()));
        }
    }

    /**
     * An estimate that was written before.
     *
     * @throws IllegalArgumentException where the text is none
     */
    public static FrameEstimateAnswer read(JsonText text) {
        try {
            return KEPT.readValue(text.utf8(), FrameEstimateAnswer.class);
        } catch (IOException e) {
            throw new IllegalArgumentException("what is kept is no frame estimate", e);
        }
    }

    static FrameEstimateAnswer of(FrameEstimate estimate, List<String> kinds, Shown shown, EngineAnswer engine) {
        List<JointAnswer> joints = new ArrayList<>(kinds.size());
        for (int i = 0; i < kinds.size(); i++) {
            joints.add(JointAnswer.of(estimate.joints().get(i), kinds.get(i), shown));
        }
        return new FrameEstimateAnswer(
                estimate.name().orElse(null),
                estimate.quantity(),
                joints,
                TotalsAnswer.of(
                        estimate.perFrame(), estimate.perFrame().filler().rods(), shown),
                TotalsAnswer.of(estimate.forQuantity(), estimate.wholeRods(), shown),
                Shares.of(estimate.perFrame().gas()),
                estimate.cost().map(CostAnswer::of).orElse(null),
                AssumptionAnswer.of(estimate.assumptions(), shown),
                BasisAnswer.of(estimate.basis()),
                CautionAnswer.of(estimate.cautions(), shown),
                engine);
    }
}
