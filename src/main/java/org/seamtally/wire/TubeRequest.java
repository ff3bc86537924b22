package org.seamtally.wire;

import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;

/** A round tube. */
@Schema(description = "A round tube.")
public record TubeRequest(
        @NotNull @Within(value = Dimension.LENGTH, min = "3 mm", max = "1 m") @Schema(description = "Outside diameter.")
        Leaf outsideDiameter,

        @NotNull
        @Within(value = Dimension.LENGTH, min = "0.2 mm", max = "50 mm")
        @Schema(description = "Wall thickness, below half the outside diameter.", examples = "0.095 in")
        Leaf wall)
        implements CrossChecked {

    double diameter() {
        return Read.length(outsideDiameter);
    }

    double thickness() {
        return Read.length(wall);
    }

    /** Outside diameter where it can be read, for cross-checks. */
    static Double tryDiameter(TubeRequest tube) {
        return tube == null ? null : Read.tryQuantity(tube.outsideDiameter, Dimension.LENGTH);
    }

    static Double tryWall(TubeRequest tube) {
        return tube == null ? null : Read.tryQuantity(tube.wall, Dimension.LENGTH);
    }

    @Override
    public void check(Contradictions contradictions) {
        Double outside = tryDiameter(this);
        Double thickness = tryWall(this);
        if (outside != null && thickness != null && thickness >= outside / 2) {
            contradictions.add(
                    "wall", Violation.Key.CONTRADICTION, "the wall is thinner than half the outside diameter", wall);
        }
    }
}
