package org.seamtally.wire;

import jakarta.validation.Valid;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenFillet;
import org.seamtally.quantity.Dimension;

/** A fillet's section. */
@Schema(description = "A fillet's section, square to the seam.")
public record FilletRequest(
        @Within(value = Dimension.LENGTH, min = "0.5 mm", max = "50 mm")
        @Schema(
                description =
                        "Length of both legs, along the surfaces. Left out: 1.25 times the thinner wall, at most an"
                                + " edge's thickness.",
                examples = "0.125 in")
        Leaf leg,

        @Valid @Schema(description = "Form of the face. Left out: flat.")
        FaceRequest face,

        @Within(value = Dimension.LENGTH, min = "0 mm", max = "5 mm")
        @Schema(description = "Gap at the root. Left out: none.", examples = "0 mm")
        Leaf rootGap) {

    static GivenFillet given(FilletRequest request) {
        return request == null
                ? GivenFillet.NONE
                : new GivenFillet(
                        Read.length(request.leg),
                        request.face == null ? null : request.face.face(),
                        Read.length(request.rootGap));
    }
}
