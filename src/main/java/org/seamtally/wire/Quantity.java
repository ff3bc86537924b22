package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Display;

/** A number with its unit. */
@Schema(
        description = "A number with its unit, rounded to 9 significant digits.",
        examples = "{\"value\": 175.913711, \"unit\": \"mm\"}")
public record Quantity(
        @Schema(description = "The number.", required = true)
        double value,

        @Schema(description = "The unit's symbol.", required = true)
        String unit) {

    static Quantity of(Display display) {
        return new Quantity(display.value(), display.unit());
    }
}
