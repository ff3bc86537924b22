package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.arc.FillerUse;

/** Filler used. */
@Schema(description = "Filler used.")
public record FillerAnswer(
        @Schema(description = "Mass deposited.", required = true)
        Quantity mass,

        @Schema(description = "Mass bought for it: stubs and losses included.", required = true)
        Quantity consumed,

        @Schema(description = "Rods, a real number; whole for the order.", required = true, minimum = "0")
        double rods) {

    static FillerAnswer of(FillerUse use, Shown shown) {
        return of(use, use.rods(), shown);
    }

    static FillerAnswer of(FillerUse use, double rods, Shown shown) {
        return new FillerAnswer(shown.mass(use.mass()), shown.mass(use.consumed()), Shown.number(rods));
    }
}
