package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;

/** The hose. */
@Schema(description = "The hose between meter and gas valve.")
public record HoseRequest(
        @Within(value = Dimension.LENGTH, min = "1 mm", max = "25 mm")
        @Schema(description = "Bore. Left out: 1/4 in.", examples = "0.25 in")
        Leaf insideDiameter,

        @Within(value = Dimension.LENGTH, min = "100 mm", max = "200 m")
        @Schema(description = "Length. Left out: 25 ft.", examples = "25 ft")
        Leaf length) {}
