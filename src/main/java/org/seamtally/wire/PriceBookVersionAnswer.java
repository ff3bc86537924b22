package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.PriceBookVersion;

/** A version of a price book. */
@Schema(description = "A version of a price book, with its prices as they were sent.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PriceBookVersionAnswer(
        @Schema(description = "The price book.", required = true, examples = "Shop floor")
        String name,

        @Schema(description = "Which version.", required = true, minimum = "1")
        int version,

        @Schema(description = "The day from which on it is used.", required = true, format = "date")
        String effective,

        @Schema(description = "Why, in the shop's own words.")
        String note,

        @Schema(description = "When it was made.", required = true, format = "date-time")
        String made,

        @Schema(description = "The prices.", required = true, implementation = PricesRequest.class)
        JsonText prices) {

    static PriceBookVersionAnswer of(PriceBookVersion version) {
        return new PriceBookVersionAnswer(
                version.book().text(),
                version.number(),
                version.effective().toString(),
                version.note().orElse(null),
                version.made().toString(),
                new JsonText(version.prices()));
    }
}
