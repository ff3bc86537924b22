package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.Assumption;

/** A default that was used. */
@Schema(description = "A default that was used for what was left out.")
public record AssumptionAnswer(
        @Schema(
                description = "The field that was left out; frame.joints[*] where more than one joint left it out.",
                required = true,
                examples = "arc.voltage")
        String path,

        @Schema(description = "What was taken, as it would be sent.", required = true, examples = "11 V")
        String value,

        @Schema(
                description = "On whose word.",
                required = true,
                examples = "9 to 15 V across a short argon arc: common practice, no source")
        String because,

        @JsonInclude(JsonInclude.Include.NON_EMPTY)
        @Schema(description = "Marks of the joints it was used for; absent where it is the whole request's.")
        List<String> joints) {

    /** No joints are left out where it is written, and are none where it is read again. */
    public AssumptionAnswer {
        joints = joints == null ? List.of() : joints;
    }

    static List<AssumptionAnswer> of(List<Assumption> assumptions, Shown shown) {
        return assumptions.stream()
                .map(a -> new AssumptionAnswer(a.path(), shown.of(a.value()), shown.of(a.because()), a.joints()))
                .toList();
    }
}
