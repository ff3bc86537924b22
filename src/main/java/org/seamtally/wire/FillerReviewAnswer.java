package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.metal.BaseReview;
import org.seamtally.metal.Reason;
import org.seamtally.metal.ReviewedFiller;
import org.seamtally.quantity.Dimension;

/** What is found of one filler. */
@Schema(description = "What is found of one filler.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FillerReviewAnswer(
        @Schema(description = "Classification, or `own analysis`.", required = true, examples = "ER70S-2")
        String filler,

        @Schema(description = "Its place, 1 the best.", required = true, minimum = "1")
        int rank,

        @Schema(description = "Mass per cent of the rod by element.", required = true)
        Map<String, Double> composition,

        @Schema(description = "Least tensile strength of the undiluted weld metal; absent where it is not known.")
        Quantity leastTensileStrength,

        @Schema(description = "The diluted weld metal.", required = true)
        AnalysisAnswer weldMetal,

        @Schema(description = "How the seam cools from the start temperature.", required = true)
        Cooling cooling,

        @Schema(description = "Hardness beside the seam, welded from the start temperature.", required = true)
        HardnessAnswer hardness,

        @Schema(description = "Whether preheat is due.", required = true)
        PreheatAdviceAnswer preheat,

        @Schema(
                description =
                        "Whether it is cautioned for cracking: the weld metal is hardenable, and more so than the tube.",
                required = true)
        boolean cautionedForCracking,

        @Schema(
                description = "The step of the ranking that parts it from the next one (the last from the one before);"
                        + " absent where nothing does.",
                enumeration = {"cracking", "preheat", "strength", "name"})
        String decidedBy,

        @Schema(description = "Why it has its place, in the order of the ranking's steps.", required = true)
        List<Why> reasons,

        @Schema(description = "What to look at with this filler.", required = true)
        List<CautionAnswer> cautions) {

    /** How the seam cools. */
    @Schema(description = "How the seam cools; the base's part has all of it.")
    public record Cooling(
            @Schema(description = "t8/5.", required = true) Quantity t85,

            @Schema(
                    description = "Which heat flow holds.",
                    required = true,
                    enumeration = {"thin", "thick"})
            String regime) {}

    /** A reason. */
    @Schema(description = "A reason for its place.")
    public record Why(
            @Schema(
                    description = "The step of the ranking it speaks to.",
                    required = true,
                    enumeration = {"cracking", "preheat", "strength", "name"})
            String step,

            @Schema(description = "Plain words.", required = true)
            String text) {

        static Why of(Reason reason, Shown shown) {
            return new Why(Words.lower(reason.step()), shown.of(reason.text()));
        }
    }

    static FillerReviewAnswer of(ReviewedFiller filler, BaseReview base, Shown shown) {
        return new FillerReviewAnswer(
                filler.rod().name(),
                filler.rank(),
                CatalogueAnswers.composition(filler.rod().composition()),
                shown.of(Dimension.STRESS, filler.rod().tensileStrength()),
                AnalysisAnswer.of(
                        filler.weldMetal(),
                        filler.carbonEquivalents(),
                        filler.idealDiameter(),
                        filler.martensiteStart(),
                        shown),
                new Cooling(
                        shown.time(base.cooling().time()),
                        Words.lower(base.cooling().regime())),
                HardnessAnswer.of(base.hardness()),
                PreheatAdviceAnswer.of(filler.preheat(), shown),
                filler.cautionedForCracking(),
                filler.decidedBy().map(Words::lower).orElse(null),
                filler.reasons().stream().map(reason -> Why.of(reason, shown)).toList(),
                CautionAnswer.ofMetal(filler.cautions(), shown));
    }
}
