package org.seamtally.wire;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.Joint;
import org.seamtally.seam.SeamCourse;

/** A place along a seam. */
@Schema(description = "A place along a seam.")
public record PlaceAnswer(
        @Schema(description = "Length of the root line up to there.", required = true)
        Quantity along,

        @Schema(description = "Angle between the two surfaces there.", required = true)
        Quantity dihedralAngle,

        @Schema(description = "Section of the deposit there, square to the seam.", required = true)
        Quantity section) {

    /** A joint's seam from its start to its end; null for a plug. */
    static List<PlaceAnswer> of(Joint joint, Shown shown) {
        return joint.curve()
                .map(line -> SeamCourse.along(line, joint.section().orElseThrow()).stream()
                        .map(place -> new PlaceAnswer(
                                shown.length(place.along()),
                                shown.angle(place.dihedral()),
                                shown.of(Dimension.AREA, place.section())))
                        .toList())
                .orElse(null);
    }
}
