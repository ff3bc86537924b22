package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One joint's deposit. */
@Schema(description = "One joint's seam, deposit and filler.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record DepositAnswer(
        @Schema(description = "The seam.", required = true) SeamAnswer seam,
        @Schema(description = "Filler.", required = true) FillerAnswer filler,

        @Schema(
                description =
                        "Places along the seam, at most 181, both ends and the corners among them; a round ends where it"
                                + " began. Absent where it was not asked for, and for a plug.")
        List<PlaceAnswer> course,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at.", required = true)
        List<CautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {}
