package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Settings;

/** One joint asked about by itself. */
@Schema(description = "One joint by itself, in the words of a frame estimate. Only its kind and sizes are needed.")
public record OneJointRequest(
        @NotNull @Valid @Schema(description = "The joint.") JointRequest joint,

        @Valid @Schema(description = "Base steel and dilution.")
        SteelRequest steel,

        @Valid @Schema(description = "The filler rod.") FillerRequest filler,

        @Valid @Schema(description = "How the arc is run.") ArcRequest arc,

        @Valid @Schema(description = "Shielding gas and its way to the arc.")
        GasRequest gas,

        @Valid @Schema(description = "How joints are preheated.")
        PreheatRequest preheat) {

    Settings settings() {
        return Read.settings(steel, filler, arc, gas, preheat);
    }
}
