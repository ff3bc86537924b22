package org.seamtally.wire;

import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointShape;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.Plug;

/** A hole filled. */
@Schema(description = "A plug (rosette): a round hole in the upper part, filled. It has no seam length.")
public final class PlugRequest extends JointRequest {

    static final String KIND = "plug";

    @NotNull
    @Within(value = Dimension.LENGTH, min = "2 mm", max = "100 mm")
    @Schema(description = "Diameter of the hole.", examples = "0.375 in")
    public Leaf holeDiameter;

    @NotNull
    @Within(value = Dimension.LENGTH, min = "0.2 mm", max = "50 mm")
    @Schema(description = "Depth of the hole: the upper part's thickness.", examples = "0.095 in")
    public Leaf depth;

    @Override
    JointShape shape() {
        return defaults -> new Plug(Read.length(holeDiameter), Read.length(depth));
    }
}
