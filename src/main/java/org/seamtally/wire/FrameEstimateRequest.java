package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.FrameJob;

/** A frame to be estimated. */
@Schema(
        description =
                "A frame to be estimated. Only the joints' kinds and sizes are needed: every default used is listed"
                        + " in the answer.")
public record FrameEstimateRequest(
        @NotNull @Valid @Schema(description = "The frame.") FrameRequest frame,

        @Valid @Schema(description = "Base steel and dilution.")
        SteelRequest steel,

        @Valid @Schema(description = "The filler rod.") FillerRequest filler,

        @Valid @Schema(description = "How the arc is run.") ArcRequest arc,

        @Valid @Schema(description = "Shielding gas and its way to the arc.")
        GasRequest gas,

        @Valid @Schema(description = "How joints are preheated.")
        PreheatRequest preheat,

        @Valid @Schema(description = "How the shop's time is counted.")
        LabourRequest labour,

        @Valid @Schema(description = "The shop's prices. Left out: the answer has no cost part.")
        PricesRequest prices) {

    FrameJob job() {
        return new FrameJob(
                Read.text(frame.name()),
                Read.whole(frame.quantity()),
                frame.joints().stream().map(JointRequest::given).toList(),
                Read.settings(steel, filler, arc, gas, preheat),
                LabourRequest.given(labour),
                Read.maybe(prices).map(PricesRequest::given));
    }
}
