package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One set-up's losses. */
@Schema(description = "What one set-up takes and loses at each start.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record GasLossAnswer(
        @Schema(description = "Gas of one start.", required = true)
        PerStartAnswer perStart,

        @Schema(description = "The set-up while its gas flows steadily.", required = true)
        SteadyAnswer steady,

        @Schema(description = "The start on a filled hose.", required = true)
        StartAnswer start,

        @Schema(description = "What the joint's starts take; absent where none was sent.")
        GasAnswer joint,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at.", required = true)
        List<CautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {}
