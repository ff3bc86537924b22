package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A field of a request that differs. */
@Schema(description = "A field of the request that differs.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FieldChange(
        @Schema(
                description = "Where, joints by their marks and lines of the shop's own by what they are for.",
                required = true,
                examples = "frame.joints[R1].branch.wall")
        String path,

        @Schema(description = "What was sent, as JSON; absent where nothing was.", examples = "\"0.095 in\"")
        String from,

        @Schema(description = "What is sent, as JSON; absent where nothing is.", examples = "\"0.12 in\"")
        String to) {

    /** Fields that differ, in the order of the later request, those that were left out after it. */
    static List<FieldChange> between(Map<String, String> from, Map<String, String> to) {
        Map<String, FieldChange> changes = new LinkedHashMap<>();
        to.forEach((path, value) -> changes.put(path, new FieldChange(path, from.get(path), value)));
        from.forEach((path, value) -> changes.putIfAbsent(path, new FieldChange(path, value, null)));
        return new ArrayList<>(changes.values().stream()
                .filter(change -> !Objects.equals(change.from, change.to))
                .toList());
    }
}
