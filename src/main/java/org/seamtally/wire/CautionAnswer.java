package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Caution;

/** Something to look at. */
@Schema(description = "Something to look at before anyone relies on the figures.")
public record CautionAnswer(
        @Schema(description = "A stable word.", required = true, examples = "narrow-dihedral")
        String cause,

        @Schema(description = "Plain words.", required = true)
        String text,

        @JsonInclude(JsonInclude.Include.NON_NULL)
        @Schema(description = "Mark of the joint; absent where it is the whole frame's.", examples = "R1")
        String joint) {

    static List<CautionAnswer> ofMetal(List<org.seamtally.metal.Caution> cautions, Shown shown) {
        return cautions.stream()
                .map(c -> new CautionAnswer(c.cause(), shown.of(c.text()), null))
                .toList();
    }

    static List<CautionAnswer> of(List<Caution> cautions, Shown shown) {
        return cautions.stream()
                .map(c -> new CautionAnswer(
                        c.cause(), shown.of(c.text()), c.joint().orElse(null)))
                .toList();
    }
}
