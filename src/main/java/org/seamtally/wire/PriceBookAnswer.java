package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.PriceBook;
import org.seamtally.quote.PriceBookVersion;

/** A price book. */
@Schema(description = "A price book: the version that quotes of today take, and all versions.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PriceBookAnswer(
        @Schema(description = "The price book.", required = true, examples = "Shop floor")
        String name,

        @Schema(description = "The version made last, effective or not.", required = true, minimum = "1")
        int latest,

        @Schema(description = "The version that quotes of today take; absent where none is effective yet.")
        PriceBookVersionAnswer current,

        @Schema(description = "All versions, the first one first.", required = true)
        List<VersionAnswer> versions) {

    static PriceBookAnswer of(PriceBook book, LocalDate today) {
        return new PriceBookAnswer(
                book.name().text(),
                book.latest().number(),
                book.effectiveOn(today).map(PriceBookVersionAnswer::of).orElse(null),
                book.versions().stream().map(VersionAnswer::of).toList());
    }

    /** A version told of. */
    @Schema(description = "A version told of.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record VersionAnswer(
            @Schema(description = "Its number.", required = true, minimum = "1")
            int version,

            @Schema(description = "The day from which on it is used.", required = true, format = "date")
            String effective,

            @Schema(description = "Why, in the shop's own words.")
            String note,

            @Schema(description = "When it was made.", required = true, format = "date-time")
            String made,

            @Schema(description = "Where it is.", required = true)
            String href) {

        static VersionAnswer of(PriceBookVersion version) {
            return new VersionAnswer(
                    version.number(),
                    version.effective().toString(),
                    version.note().orElse(null),
                    version.made().toString(),
                    Hrefs.priceBookVersion(version.book(), version.number()));
        }
    }
}
