package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.catalogue.Steels;
import org.seamtally.frame.GivenSteel;

/** Base steel and dilution. */
@Schema(description = "Base steel and dilution.")
public record SteelRequest(
        @Word(Words.STEEL) @Schema(description = "Base steel, by its name in the catalogue.", examples = "4130")
        Leaf base,

        @Share(min = "0", max = "1", below = true)
        @Schema(description = "Share of the weld that is base metal. Left out: 0.30.", examples = "0.30")
        Leaf dilution) {

    static GivenSteel given(SteelRequest request) {
        return request == null
                ? GivenSteel.NONE
                : new GivenSteel(
                        request.base == null
                                ? null
                                : Steels.find(request.base.text()).orElseThrow(),
                        Read.number(request.dilution));
    }
}
