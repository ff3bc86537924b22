package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenJoint;

/** The frame. */
@Schema(description = "A frame and its joints.")
public record FrameRequest(
        @Text(max = 200)
        @Schema(description = "What the customer calls it.", examples = "Two-seat trail buggy, rear bay")
        Leaf name,

        @Whole(min = 1, max = 1_000_000) @Schema(description = "Frames in the order. Left out: 1.", examples = "6")
        Leaf quantity,

        @NotNull
        @Size(min = 1, max = FrameRequest.MOST_JOINTS)
        @Schema(description = "The joints, 1 to 10 000 of them.")
        List<@NotNull @Valid JointRequest> joints)
        implements CrossChecked {

    /** Joints of a frame at most: far beyond any frame, and a bound on what one request may cost. */
    static final int MOST_JOINTS = 10_000;

    @Override
    public void check(Contradictions contradictions) {
        Set<String> marks = new HashSet<>();
        // a joint without a mark is called by its number
        for (int i = 0; joints != null && i < joints.size(); i++) {
            if (joints.get(i) != null && joints.get(i).mark == null) {
                marks.add(GivenJoint.markOf(i));
            }
        }
        for (int i = 0; joints != null && i < joints.size(); i++) {
            Leaf mark = joints.get(i) == null ? null : joints.get(i).mark;
            if (mark != null && !marks.add(mark.text())) {
                contradictions.add(
                        "joints[" + i + "].mark", Violation.Key.DUPLICATE, "no two joints have the same mark", mark);
            }
        }
    }
}
