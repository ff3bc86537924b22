package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One joint's preheat. */
@Schema(description = "One joint's preheat.")
public record JointPreheatAnswer(
        @Schema(description = "What it takes.", required = true)
        PreheatAnswer preheat,

        @Schema(
                description =
                        "Whether preheat is due, welded from ambient temperature; absent where the formulas do not take"
                                + " the alloy.")
        @JsonInclude(JsonInclude.Include.NON_NULL)
        PreheatAdviceAnswer recommended,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at.", required = true)
        List<CautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {}
