package org.seamtally.wire;

import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quote.ComputedBy;

/** What computed an answer. */
@Schema(description = "What computed the answer: the same engine gives the same answer.")
public record EngineAnswer(
        @Schema(description = "Version of the program.", required = true, examples = "0.1.0")
        String version,

        @Schema(description = "Digest of the catalogue's tables.", required = true)
        String catalogue) {

    static EngineAnswer of(ComputedBy engine) {
        return new EngineAnswer(engine.version(), engine.catalogue());
    }

    ComputedBy computedBy() {
        return new ComputedBy(version, catalogue);
    }
}
