package org.seamtally.wire;

import jakarta.validation.Valid;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Settings for all frames of a job file. */
@Schema(
        description =
                "Settings for all frames of a job file: the parts of a frame estimate beside the frame. A frame takes"
                        + " from them the parts that it leaves out, whole parts.")
public record JobSettingsRequest(
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

        @Valid @Schema(description = "The shop's prices. Left out: the answers have no cost part.")
        PricesRequest prices) {}
