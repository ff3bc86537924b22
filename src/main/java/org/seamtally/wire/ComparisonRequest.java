package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.gas.SetUpComparison;
import org.seamtally.quantity.Dimension;

/** Set-ups to compare. */
@Schema(description = "2 to 50 set-ups under one duty; the first is what the others are measured against.")
public record ComparisonRequest(
        @NotNull @Valid @Schema(description = "The work that they are compared under.")
        DutyRequest duty,

        @Valid @Schema(description = "Gas settings that the set-ups share.")
        GasRequest gas,

        @Word(Words.CURRENCY) @Schema(description = "ISO 4217 code; needed with any price.", examples = "USD")
        Leaf currency,

        @Price(Dimension.GAS_VOLUME)
        @Schema(description = "Gas by volume at the reference state.", examples = "0.35/ft3")
        Leaf gasPrice,

        @NotNull
        @Size(min = SetUpComparison.FEWEST, max = SetUpComparison.MOST)
        @Schema(description = "The set-ups, 2 to 50 of them.")
        List<@NotNull @Valid SetUpRequest> setUps)
        implements CrossChecked {

    @Override
    public void check(Contradictions contradictions) {
        if (duty != null && duty.current() == null && (gas == null || gas.postFlow() == null)) {
            contradictions.add(
                    "duty.current",
                    Violation.Key.MISSING,
                    "the current sets the post-flow; or give gas.postFlow",
                    null);
        }
        boolean priced = gasPrice != null;
        Set<String> names = new HashSet<>();
        for (int i = 0; setUps != null && i < setUps.size(); i++) {
            SetUpRequest setUp = setUps.get(i);
            if (setUp == null) {
                continue;
            }
            priced |= setUp.price() != null;
            if (setUp.name() != null && !names.add(setUp.name().text())) {
                contradictions.add(
                        "setUps[" + i + "].name",
                        Violation.Key.DUPLICATE,
                        "no two set-ups have the same name",
                        setUp.name());
            }
        }
        if (priced && currency == null) {
            contradictions.add("currency", Violation.Key.MISSING, "prices need their currency", null);
        }
    }
}
