package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.gas.GasUse;

/** Gas of one start. */
@Schema(description = "Gas of one start by where it goes, at the reference state.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PerStartAnswer(
        @Schema(description = "While the arc burns; absent where no burn time was given.")
        Quantity arc,

        @Schema(description = "Before the arc.", required = true)
        Quantity preFlow,

        @Schema(description = "Thrown away above the setting.", required = true)
        Quantity startSurge,

        @Schema(description = "After the arc.", required = true)
        Quantity postFlow,

        @Schema(description = "All of these that are present.", required = true)
        Quantity total) {

    static PerStartAnswer of(GasUse use, boolean burns, Shown shown) {
        return new PerStartAnswer(
                burns ? shown.gas(use.arc()) : null,
                shown.gas(use.preFlow()),
                shown.gas(use.startSurge()),
                shown.gas(use.postFlow()),
                shown.gas(burns ? use.total() : use.total() - use.arc()));
    }
}
