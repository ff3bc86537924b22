package org.seamtally.wire;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.metal.Hardness;

/** Hardness beside the seam. */
@Schema(
        description = "Peak hardness of the base metal beside the seam by two published correlations: neither is a"
                + " measurement, the spread says how far they can be trusted.")
public record HardnessAnswer(
        @Schema(
                description = "By Maynier et al. 1978, martensite and bainite mixed by the share below.",
                required = true)
        Quantity maynier,

        @Schema(description = "By Yurioka et al. 1987.", required = true)
        Quantity yurioka,

        @Schema(description = "How far the two are apart.", required = true)
        Quantity spread,

        @Schema(description = "Share of martensite, by Yurioka et al.", required = true, minimum = "0", maximum = "1")
        double martensiteShare,

        @Schema(description = "What lies outside the range of either.", required = true)
        List<String> outside) {

    /** Vickers hardness has its own number in both unit systems. */
    private static final String VICKERS = "HV";

    static HardnessAnswer of(Hardness hardness) {
        return new HardnessAnswer(
                vickers(hardness.byMaynier()),
                vickers(hardness.byYurioka()),
                vickers(hardness.spread()),
                Shown.number(hardness.martensiteShare()),
                hardness.outside());
    }

    private static Quantity vickers(double hardness) {
        return new Quantity(Shown.number(hardness), VICKERS);
    }
}
