package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Caution;
import org.seamtally.frame.FrameEstimate;

/** Something to look at, told once for all the joints that it is true of. */
@Schema(description = "Something to look at before anyone relies on the figures, told once for all its joints.")
public record SharedCautionAnswer(
        @Schema(description = "A stable word.", required = true, examples = "narrow-dihedral")
        String cause,

        @Schema(description = "Plain words.", required = true)
        String text,

        @JsonInclude(JsonInclude.Include.NON_EMPTY)
        @Schema(description = "Marks of its joints, in their order; absent where it is the whole frame's.")
        List<String> joints) {

    private record Said(String cause, String text) {}

    /** The joints' cautions in the order in which they come up, then the frame's own. */
    static List<SharedCautionAnswer> of(FrameEstimate estimate, Shown shown) {
        Map<Said, List<String>> marks = new LinkedHashMap<>();
        Stream.concat(
                        estimate.joints().stream().flatMap(joint -> joint.cautions().stream()),
                        estimate.cautions().stream())
                .forEach(caution -> marks.computeIfAbsent(said(caution, shown), said -> new ArrayList<>())
                        .addAll(caution.joint().stream().toList()));
        return marks.entrySet().stream()
                .map(one -> new SharedCautionAnswer(
                        one.getKey().cause(), one.getKey().text(), one.getValue()))
                .toList();
    }

    private static Said said(Caution caution, Shown shown) {
        return new Said(caution.cause(), shown.of(caution.text()));
    }
}
