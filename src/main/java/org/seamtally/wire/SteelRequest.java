package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenSteel;
import org.seamtally.quantity.Dimension;

/** Base steel and dilution. */
@Schema(description = "Base steel and how it is welded, as far as the metal asks.")
public record SteelRequest(
        @WordOrAnalysis(Words.STEEL)
        @Schema(
                description = "Base steel, by its name in the catalogue or its analysis. Left out: 4130.",
                examples = "4130")
        NameOrAnalysis base,

        @Share(min = "0", max = "1", below = true)
        @Schema(description = "Share of the weld that is base metal. Left out: 0.30.", examples = "0.30")
        Leaf dilution,

        @Within(value = Dimension.HYDROGEN, min = "0.1 mL/100g", max = "100 mL/100g")
        @Schema(description = "Diffusible hydrogen of the deposit (ISO 3690). Left out: 3 mL/100g.")
        Leaf hydrogen,

        @Word(Words.RESTRAINT)
        @Schema(
                description = "How far the parts are held from following the weld's shrinkage. Left out: medium.",
                examples = "medium")
        Leaf restraint) {

    static GivenSteel given(SteelRequest request) {
        return request == null
                ? GivenSteel.NONE
                : new GivenSteel(
                        request.base == null ? null : request.base.steel(),
                        Read.number(request.dilution),
                        Read.quantity(request.hydrogen, Dimension.HYDROGEN),
                        SteelReviewRequest.restraint(request.restraint));
    }
}
