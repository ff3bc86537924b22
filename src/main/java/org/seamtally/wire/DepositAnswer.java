package org.seamtally.wire;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One joint's deposit. */
@Schema(description = "One joint's seam, deposit and filler.")
public record DepositAnswer(
        @Schema(description = "The seam.", required = true) SeamAnswer seam,
        @Schema(description = "Filler.", required = true) FillerAnswer filler,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at.", required = true)
        List<CautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {}
