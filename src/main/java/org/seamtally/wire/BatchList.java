package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Kept batches, a page of them. */
@Schema(description = "Kept batches, the latest first, a page of them.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record BatchList(
        @Schema(description = "The batches.", required = true)
        List<BatchAnswer> items,

        @Schema(description = "What to ask for the next page with; absent on the last.")
        String next) {}
