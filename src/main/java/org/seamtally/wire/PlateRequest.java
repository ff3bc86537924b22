package org.seamtally.wire;

import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;

/** A flat part. */
@Schema(description = "A flat part: plate, tab or gusset.")
public record PlateRequest(
        @NotNull
        @Within(value = Dimension.LENGTH, min = "0.3 mm", max = "100 mm")
        @Schema(description = "Thickness.", examples = "0.1875 in")
        Leaf thickness) {

    double wall() {
        return Read.length(thickness);
    }
}
