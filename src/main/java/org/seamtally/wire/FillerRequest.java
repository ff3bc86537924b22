package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.catalogue.Fillers;
import org.seamtally.frame.GivenFiller;
import org.seamtally.quantity.Dimension;

/** The rod. */
@Schema(description = "The filler rod.")
public record FillerRequest(
        @Word(Words.FILLER)
        @Schema(description = "Classification, as in the catalogue. Left out: ER70S-2.", examples = "ER70S-2")
        Leaf classification,

        @Within(value = Dimension.LENGTH, min = "0.5 mm", max = "6.4 mm")
        @Schema(description = "Rod diameter. Left out: 1/16 in.", examples = "0.0625 in")
        Leaf diameter,

        @Within(value = Dimension.LENGTH, min = "100 mm", max = "2 m")
        @Schema(description = "Rod length. Left out: 36 in.", examples = "36 in")
        Leaf rodLength,

        @Within(value = Dimension.LENGTH, min = "0 mm", max = "500 mm")
        @Schema(description = "What is thrown away of each rod, below its length. Left out: 2 in.", examples = "2 in")
        Leaf stubLength,

        @Share(min = "0.5", max = "1")
        @Schema(description = "Mass deposited over mass melted. Left out: 0.98.", examples = "0.98")
        Leaf depositionEfficiency) {

    static GivenFiller given(FillerRequest request) {
        return request == null
                ? GivenFiller.NONE
                : new GivenFiller(
                        request.classification == null
                                ? null
                                : Fillers.find(request.classification.text()).orElseThrow(),
                        Read.length(request.diameter),
                        Read.length(request.rodLength),
                        Read.length(request.stubLength),
                        Read.number(request.depositionEfficiency));
    }
}
