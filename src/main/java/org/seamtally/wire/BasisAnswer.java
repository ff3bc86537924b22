package org.seamtally.wire;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Basis;

/** What a figure rests on. */
@Schema(description = "What a part of the answer rests on, and how far it can be trusted.")
public record BasisAnswer(
        @Schema(description = "The part of the answer.", required = true, examples = "gas")
        String figure,

        @Schema(description = "Plain words.", required = true)
        String text) {

    static List<BasisAnswer> of(List<Basis> basis) {
        return basis.stream().map(b -> new BasisAnswer(b.figure(), b.text())).toList();
    }
}
