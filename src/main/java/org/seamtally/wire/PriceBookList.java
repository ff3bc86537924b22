package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.PriceBook;
import org.seamtally.quote.PriceBookVersion;

/** Price books. */
@Schema(description = "Price books in the order of their names.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PriceBookList(
        @Schema(description = "The price books of this stretch.", required = true)
        List<Item> items,

        @Schema(description = "What to send as after for the next stretch; absent at the list's end.")
        String next) {

    /** A price book told of. */
    @Schema(description = "A price book told of.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Item(
            @Schema(description = "The price book.", required = true, examples = "Shop floor")
            String name,

            @Schema(description = "The version made last, effective or not.", required = true, minimum = "1")
            int latest,

            @Schema(
                    description = "The version that quotes of today take; absent where none is effective yet.",
                    minimum = "1")
            Integer current,

            @Schema(description = "When the latest version was made.", required = true, format = "date-time")
            String made,

            @Schema(description = "Where it is.", required = true)
            String href) {

        static Item of(PriceBook book, LocalDate today) {
            return new Item(
                    book.name().text(),
                    book.latest().number(),
                    book.effectiveOn(today).map(PriceBookVersion::number).orElse(null),
                    book.latest().made().toString(),
                    Hrefs.priceBook(book.name()));
        }
    }
}
