package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenReview;
import org.seamtally.metal.Restraint;
import org.seamtally.metal.Rod;
import org.seamtally.metal.SeamShape;
import org.seamtally.metal.SteelReview;
import org.seamtally.quantity.Dimension;

/** A steel to be reviewed with the fillers that may be taken. */
@Schema(
        description =
                "A base steel, how its seam is welded, and 1 to 10 fillers to compare. The wall and the fillers are"
                        + " needed.")
public record SteelReviewRequest(
        @WordOrAnalysis(Words.STEEL)
        @Schema(
                description = "Base steel, by its name in the catalogue or its analysis. Left out: 4130.",
                examples = "4130")
        NameOrAnalysis base,

        @NotNull
        @Within(value = Dimension.LENGTH, min = "0.2 mm", max = "100 mm")
        @Schema(description = "The thicker wall at the joint.", examples = "0.095 in")
        Leaf wall,

        @Share(min = "0", max = "1", below = true)
        @Schema(description = "Share of the weld that is base metal. Left out: 0.30.", examples = "0.35")
        Leaf dilution,

        @NotNull
        @Size(min = 1, max = SteelReview.MOST_FILLERS)
        @Schema(description = "Fillers, by their classification in the catalogue or their analysis.")
        List<@NotNull @WordOrAnalysis(Words.FILLER) NameOrAnalysis> fillers,

        @Valid @Schema(description = "The arc along the seam.")
        ReviewArcRequest arc,

        @Within(value = Dimension.HYDROGEN, min = "0.1 mL/100g", max = "100 mL/100g")
        @Schema(description = "Diffusible hydrogen of the deposit (ISO 3690). Left out: 3 mL/100g.")
        Leaf hydrogen,

        @Within(value = Dimension.TEMPERATURE, min = "-30 degC", max = "450 degC")
        @Schema(description = "Temperature of the metal when the arc is struck. Left out: 68 degF.")
        Leaf startTemperature,

        @Word(Words.RESTRAINT)
        @Schema(
                description = "How far the parts are held from following the weld's shrinkage. Left out: medium.",
                examples = "medium")
        Leaf restraint,

        @Word(Words.SEAM_SHAPE)
        @Schema(description = "How many ways the heat can leave the seam. Left out: fillet.", examples = "fillet")
        Leaf shape) {

    GivenReview given() {
        return new GivenReview(
                base == null ? null : base.steel(),
                Read.length(wall),
                Read.number(dilution),
                rods(),
                ReviewArcRequest.given(arc),
                Read.quantity(hydrogen, Dimension.HYDROGEN),
                Read.quantity(startTemperature, Dimension.TEMPERATURE),
                restraint(restraint),
                shape == null ? null : constant(SeamShape.class, shape));
    }

    /** An analysis is called by its place among the analyses, where there are several. */
    private List<Rod> rods() {
        long analyses =
                fillers.stream().filter(filler -> filler.analysis() != null).count();
        List<Rod> rods = new ArrayList<>();
        int own = 0;
        for (NameOrAnalysis filler : fillers) {
            own += filler.analysis() == null ? 0 : 1;
            rods.add(filler.filler(analyses == 1 ? "own analysis" : "own analysis " + own));
        }
        return rods;
    }

    static Restraint restraint(Leaf word) {
        return word == null ? null : constant(Restraint.class, word);
    }

    private static <E extends Enum<E>> E constant(Class<E> type, Leaf word) {
        return Enum.valueOf(type, word.text().toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
