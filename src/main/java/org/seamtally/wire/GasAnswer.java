package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.gas.GasUse;

/** Gas by where it goes. */
@Schema(description = "Shielding gas by where it goes, at the reference state.")
public record GasAnswer(
        @Schema(description = "While the arc burns, tacks included.", required = true)
        Quantity arc,

        @Schema(description = "Before each arc.", required = true)
        Quantity preFlow,

        @Schema(description = "Net surge of all starts: what they throw away above the setting.", required = true)
        Quantity startSurge,

        @Schema(description = "After each arc.", required = true)
        Quantity postFlow,

        @Schema(description = "Through the inside of the tube.", required = true)
        Quantity backPurge,

        @Schema(description = "Lost to leaks through the labour time.", required = true)
        Quantity leak,

        @Schema(description = "All of it.", required = true) Quantity total,

        @Schema(description = "Arc starts: segments and tacks.", required = true, minimum = "0")
        long starts,

        @Schema(
                description =
                        "Gas stored in the hose above its flowing state, over all starts: the bound of the start surge.",
                required = true)
        Quantity storedGas) {

    static GasAnswer of(GasUse use, double stored, Shown shown) {
        return new GasAnswer(
                shown.gas(use.arc()),
                shown.gas(use.preFlow()),
                shown.gas(use.startSurge()),
                shown.gas(use.postFlow()),
                shown.gas(use.backPurge()),
                shown.gas(use.leak()),
                shown.gas(use.total()),
                use.starts(),
                shown.gas(stored));
    }
}
