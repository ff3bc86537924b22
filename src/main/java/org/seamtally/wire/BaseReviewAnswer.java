package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.metal.BaseReview;
import org.seamtally.metal.SoftenedZone;
import org.seamtally.quantity.Dimension;

/** What is found of the tube, whatever the filler. */
@Schema(description = "What is found of the tube, whatever the filler.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record BaseReviewAnswer(
        @Schema(description = "Name in the catalogue, or `own analysis`.", required = true, examples = "4130")
        String name,

        @Schema(description = "Condition of delivery; absent where only an analysis was sent.", examples = "normalized")
        String heatTreatment,

        @Schema(description = "Least tensile strength; absent where it is not known.")
        Quantity leastTensileStrength,

        @Schema(description = "Mass per cent by element.", required = true)
        Map<String, Double> composition,

        @Schema(description = "CE(IIW), CET and Pcm, each with the range it is meant for.", required = true)
        List<AnalysisAnswer.Equivalent> carbonEquivalents,

        @Schema(description = "Hardenability by ASTM A255.", required = true)
        AnalysisAnswer.Diameter idealDiameter,

        @Schema(description = "Where martensite starts to form on cooling.", required = true)
        AnalysisAnswer.Martensite martensiteStart,

        @Schema(description = "How the seam cools from the start temperature.", required = true)
        CoolingAnswer cooling,

        @Schema(description = "Hardness beside the seam, welded from the start temperature.", required = true)
        HardnessAnswer hardness,

        @Schema(description = "Strength lost beside the seam; absent for a tube that is not quenched and tempered.")
        Softened softenedZone,

        @Schema(description = "What to look at on the tube.", required = true)
        List<CautionAnswer> cautions) {

    /** The softened zone. */
    @Schema(description = "The strip beside the seam where quenched-and-tempered tube has lost strength.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Softened(
            @Schema(
                    description =
                            "Tensile strength to reckon with at least: the normalized tube's; absent where unknown.")
            Quantity least,

            @Schema(description = "The tube's own least tensile strength; absent where unknown.")
            Quantity greatest,

            @Schema(description = "Why.", required = true) String reason) {

        static Softened of(SoftenedZone zone, Shown shown) {
            return new Softened(
                    shown.of(Dimension.STRESS, zone.least()),
                    shown.of(Dimension.STRESS, zone.greatest()),
                    shown.of(zone.reason()));
        }
    }

    static BaseReviewAnswer of(BaseReview base, Shown shown) {
        AnalysisAnswer analysis = AnalysisAnswer.of(
                base.metal().composition(),
                base.carbonEquivalents(),
                base.idealDiameter(),
                base.martensiteStart(),
                shown);
        return new BaseReviewAnswer(
                base.metal().name(),
                base.metal().heatTreatment().map(treatment -> treatment.text()).orElse(null),
                shown.of(Dimension.STRESS, base.metal().tensileStrength()),
                analysis.composition(),
                analysis.carbonEquivalents(),
                analysis.idealDiameter(),
                analysis.martensiteStart(),
                CoolingAnswer.of(base.cooling(), base.coolingRate(), shown),
                HardnessAnswer.of(base.hardness()),
                base.softenedZone().map(zone -> Softened.of(zone, shown)).orElse(null),
                CautionAnswer.ofMetal(base.cautions(), shown));
    }
}
