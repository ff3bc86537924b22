package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.PricedBy;

/** The version of a price book that priced a quote. */
@Schema(description = "The version of a price book that priced a quote.")
public record PricedByAnswer(
        @Schema(description = "The price book.", required = true, examples = "Shop floor")
        String name,

        @Schema(description = "Which version.", required = true, minimum = "1")
        int version,

        @Schema(description = "The day from which on it is used.", required = true, format = "date")
        String effective,

        @Schema(description = "Where it is.", required = true, examples = "/v1/price-books/Shop%20floor/versions/1")
        String href) {

    static PricedByAnswer of(PricedBy by) {
        return new PricedByAnswer(
                by.book().text(),
                by.version(),
                by.effective().toString(),
                Hrefs.priceBookVersion(by.book(), by.version()));
    }
}
