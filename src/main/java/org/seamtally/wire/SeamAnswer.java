package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.Seam;

/** A seam. */
@Schema(description = "A seam: what has to be deposited where. A plug has a volume only.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SeamAnswer(
        @Schema(description = "Length of the root line; 0 for a plug.", required = true)
        Quantity length,

        @Schema(description = "Volume deposited.", required = true)
        Quantity depositVolume,

        @Schema(description = "Volume over length; absent for a plug.")
        Quantity meanSection,

        @Schema(description = "Between which angles the two surfaces meet; absent for a plug.")
        Angles dihedralAngle,

        @Schema(
                description =
                        "Least effective throat where the dihedral angle is at most 135 deg; absent where there is no such place.")
        Quantity leastThroat,

        @Schema(
                description =
                        "Share of the length with a dihedral angle above 135 deg, where the throat depends on cope and"
                                + " penetration; absent for a plug.",
                minimum = "0",
                maximum = "1")
        Double grooveShare) {

    /** A range of angles. */
    @Schema(description = "A range of angles.")
    public record Angles(
            @Schema(description = "The least.", required = true)
            Quantity least,

            @Schema(description = "The greatest.", required = true)
            Quantity greatest) {}

    static SeamAnswer of(Seam seam, Shown shown) {
        Quantity length = shown.length(seam.length());
        Quantity volume = shown.volume(seam.depositVolume());
        return seam.course()
                .map(course -> new SeamAnswer(
                        length,
                        volume,
                        shown.of(Dimension.AREA, seam.meanSection()),
                        new Angles(shown.angle(course.leastDihedral()), shown.angle(course.greatestDihedral())),
                        shown.of(Dimension.LENGTH, course.leastThroat()),
                        Shown.number(course.grooveShare())))
                .orElseGet(() -> new SeamAnswer(length, volume, null, null, null, null));
    }
}
