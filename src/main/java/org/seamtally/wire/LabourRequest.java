package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenLabour;
import org.seamtally.quantity.Dimension;

/** Labour settings. */
@Schema(description = "How the shop's time is counted.")
public record LabourRequest(
        @Share(min = "0.01", max = "1")
        @Schema(
                description = "Arc time over arc time and handling at the joint; fit-up and set-up are not in it. Left"
                        + " out: 0.35.",
                examples = "0.30")
        Leaf operatingFactor,

        @Within(value = Dimension.TIME, min = "0 s", max = "100 h")
        @Schema(description = "Time to fit up one joint. Left out: 6 min.", examples = "6 min")
        Leaf fitUpPerJoint,

        @Within(value = Dimension.TIME, min = "0 s", max = "10000 h")
        @Schema(description = "Time to set up one order. Left out: 1 h.")
        Leaf setUpPerOrder) {

    static GivenLabour given(LabourRequest request) {
        return request == null
                ? GivenLabour.NONE
                : new GivenLabour(
                        Read.number(request.operatingFactor),
                        Read.quantity(request.fitUpPerJoint, Dimension.TIME),
                        Read.quantity(request.setUpPerOrder, Dimension.TIME));
    }
}
