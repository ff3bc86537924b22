package org.seamtally.wire;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Basis;
import org.seamtally.frame.FrameCautions;
import org.seamtally.frame.ReviewEstimator;
import org.seamtally.metal.BaseReview;
import org.seamtally.metal.WeldingConditions;
import org.seamtally.metal.YoungsModulus;
import org.seamtally.quantity.Dimension;

/** A steel reviewed with its fillers. */
@Schema(description = "A base steel reviewed with the fillers that may be taken, best first.")
public record SteelReviewAnswer(
        @Schema(description = "How the seam is welded, defaults filled in.", required = true)
        Conditions conditions,

        @Schema(description = "The tube, whatever the filler.", required = true)
        BaseReviewAnswer base,

        @Schema(description = "The fillers in the order of their rank.", required = true)
        List<FillerReviewAnswer> fillers,

        @Schema(description = "Stiffness, the same for every steel.", required = true)
        Stiffness youngsModulus,

        @Schema(description = "Every default that was used.", required = true)
        List<AssumptionAnswer> assumptions,

        @Schema(description = "What the figures rest on.", required = true)
        List<BasisAnswer> basis,

        @Schema(description = "What to look at; the base and each filler have their own.", required = true)
        List<CautionAnswer> cautions,

        @Schema(description = "What computed it.", required = true)
        EngineAnswer engine) {

    /** How the seam is welded. */
    @Schema(description = "How the seam is welded.")
    public record Conditions(
            @Schema(description = "The thicker wall at the joint.", required = true)
            Quantity wall,

            @Schema(description = "Share of the weld that is base metal.", required = true)
            double dilution,

            @Schema(description = "Travel speed.", required = true)
            Quantity travelSpeed,

            @Schema(description = "U I / v: what AWS and ASME call heat input.", required = true)
            Quantity arcEnergy,

            @Schema(description = "Arc efficiency times that.", required = true)
            Quantity heatInput,

            @Schema(description = "0.6 of the arc energy: what the formulas of EN 1011-2 take.", required = true)
            Quantity standardHeatInput,

            @Schema(description = "Diffusible hydrogen.", required = true)
            Quantity hydrogen,

            @Schema(description = "Temperature of the metal when the arc is struck.", required = true)
            Quantity startTemperature,

            @Schema(description = "How far the parts are held.", required = true, examples = "medium")
            String restraint,

            @Schema(description = "Shape of the seam.", required = true, examples = "fillet")
            String shape) {

        static Conditions of(WeldingConditions conditions, ReviewEstimator.SeamArc arc, Shown shown) {
            return new Conditions(
                    shown.length(conditions.wall()),
                    Shown.number(conditions.dilution()),
                    shown.of(Dimension.SPEED, arc.travelSpeed()),
                    shown.of(Dimension.ENERGY_PER_LENGTH, conditions.arcEnergy()),
                    shown.of(Dimension.ENERGY_PER_LENGTH, arc.heatInput()),
                    shown.of(Dimension.ENERGY_PER_LENGTH, conditions.heatInput()),
                    shown.of(Dimension.HYDROGEN, conditions.hydrogen()),
                    shown.temperature(conditions.startTemperature()),
                    Words.lower(conditions.restraint()),
                    Words.hyphened(conditions.shape()));
        }
    }

    /** Young's modulus. */
    @Schema(description = "Young's modulus: a range from handbooks.")
    public record Stiffness(
            @Schema(description = "At least.", required = true)
            Quantity least,

            @Schema(description = "At most.", required = true)
            Quantity greatest,

            @Schema(description = "Why strength does not change it.", required = true)
            String text) {

        static Stiffness of(Shown shown) {
            return new Stiffness(
                    shown.of(Dimension.STRESS, YoungsModulus.LEAST),
                    shown.of(Dimension.STRESS, YoungsModulus.GREATEST),
                    YoungsModulus.WHY);
        }
    }

    static SteelReviewAnswer of(ReviewEstimator.Reviewed reviewed, Shown shown, EngineAnswer engine) {
        BaseReview base = reviewed.review().base();
        return new SteelReviewAnswer(
                Conditions.of(reviewed.conditions(), reviewed.arc(), shown),
                BaseReviewAnswer.of(base, shown),
                reviewed.review().fillers().stream()
                        .map(filler -> FillerReviewAnswer.of(filler, base, shown))
                        .toList(),
                Stiffness.of(shown),
                AssumptionAnswer.of(reviewed.assumptions(), shown),
                BasisAnswer.of(List.of(Basis.METAL)),
                CautionAnswer.of(FrameCautions.always(), shown),
                engine);
    }
}
