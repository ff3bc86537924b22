package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Set-ups compared. */
@Schema(description = "Set-ups compared under one duty.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ComparisonAnswer(
        @Schema(description = "The set-ups, in the order sent.", required = true)
        List<SetUpAnswer> setUps,

        @Schema(description = "The set-up whose setting stands and that takes the least gas; absent where none stands.")
        String best,

        @Schema(description = "ISO 4217 code; absent where nothing was priced.")
        String currency,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at.", required = true)
        List<CautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {}
