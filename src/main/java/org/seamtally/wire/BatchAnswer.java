package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A kept batch. */
@Schema(description = "A kept batch, and how far it is.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record BatchAnswer(
        @Schema(
                description = "What it is asked for by, a UUID.",
                required = true,
                examples = "3f1c6a5e-8f2b-4d0e-9a51-7c9be0a4d210")
        String id,

        @Schema(
                description = "What its sender calls it; absent where nothing was said.",
                examples = "open orders, week 12")
        String name,

        @Schema(
                description =
                        "waiting (no frame is worked on yet, as far as is known), running, waiting-for-engine (no service"
                                + " of the engine version that it is pinned to runs: it goes on when one does), done, or cancelled.",
                required = true,
                enumeration = {"waiting", "running", "waiting-for-engine", "done", "cancelled"})
        String state,

        @Schema(description = "Engine that the batch is pinned to: one of another version leaves it.", required = true)
        String engine,

        @Schema(
                description = "Units of its results.",
                required = true,
                enumeration = {"si", "us"})
        String units,

        @Schema(
                description = "Form of the job file that was sent.",
                required = true,
                enumeration = {"ndjson", "csv"})
        String form,

        @Schema(
                description = "When the upload began, RFC 3339.",
                required = true,
                examples = "2031-03-04T05:06:07.089Z")
        String created,

        @Schema(description = "When it was cancelled, RFC 3339; absent where it was not.")
        String cancelled,

        @Schema(description = "When its latest results were kept, RFC 3339; absent before the first.")
        String latest,

        @Schema(description = "Frames.", required = true) Frames counts,

        @Schema(description = "Chunks: what is handed out, and kept, as a whole.", required = true)
        Chunks chunks,

        @Schema(description = "Frames per second since the first chunk; absent before one is done.")
        Double framesPerSecond,

        @Schema(description = "Time left at that pace; absent where there is no pace yet, or no time left.")
        Quantity timeLeft) {

    /** Frames of a batch. */
    @Schema(description = "Frames of a batch.")
    public record Frames(
            @Schema(description = "In the file.", required = true, minimum = "1")
            long frames,

            @Schema(description = "Worked on so far: done and refused together.", required = true, minimum = "0")
            long read,

            @Schema(description = "Estimated.", required = true, minimum = "0")
            long done,

            @Schema(description = "Refused, each with its problem.", required = true, minimum = "0")
            long refused) {}

    /** Chunks of a batch. */
    @Schema(description = "Chunks of a batch.")
    public record Chunks(
            @Schema(description = "Of the file.", required = true, minimum = "1")
            int all,

            @Schema(description = "With their results.", required = true, minimum = "0")
            int done) {}
}
