package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A version of a price book. */
@Schema(description = "A version of a price book: prices, and the day from which on they are used.")
public record PriceBookRequest(
        @NotNull
        @Date
        @Schema(
                description = "The day from which on quotes take these prices; days are those of UTC. A quote takes the"
                        + " version made last of those whose day has come.",
                examples = "2026-01-01")
        Leaf effective,

        @Text(max = 1000, lines = true)
        @Schema(description = "Why, in the shop's own words.", examples = "Argon went up")
        Leaf note,

        @NotNull @Valid @Schema(description = "The prices.") PricesRequest prices) {}
