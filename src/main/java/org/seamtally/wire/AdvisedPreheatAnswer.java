package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.AdvisedPreheat;

/** A preheat that is advised and not asked for. */
@Schema(description = "What a preheat that is advised, and not asked for, would take on one joint. It is in no total.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AdvisedPreheatAnswer(
        @Schema(description = "Temperature advised.", required = true)
        Quantity temperature,

        @Schema(description = "Energy supplied by the source.", required = true)
        Quantity energy,

        @Schema(description = "Heat-up (where the source's power is known) and hold.", required = true)
        Quantity time,

        @Schema(
                description =
                        "Labour and fuel or electricity at the prices sent, overhead and margin left out; absent where"
                                + " none of it is priced.",
                examples = "1.85")
        String amount) {

    static AdvisedPreheatAnswer of(AdvisedPreheat advised, Shown shown) {
        return new AdvisedPreheatAnswer(
                shown.temperature(advised.temperature()),
                shown.energy(advised.use().energy()),
                shown.time(advised.use().time()),
                advised.amount().map(CostAnswer::amount).orElse(null));
    }
}
