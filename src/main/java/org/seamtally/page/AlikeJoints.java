package org.seamtally.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.seamtally.wire.JointAnswer;

/**
 * Joints that a form tells nothing different of: they stand in one row.
 *
 * @param marks of several joints each with how many of it a frame has, where that is more than one
 * @param count joints of a frame
 * @param row what the form tells of each of them
 */
record AlikeJoints(String marks, long count, Row row) {

    private static final int LONGEST_IN_COLUMN = 26;

    /** A frame's joints in the order sent, each with the first that is like it. */
    static List<AlikeJoints> of(List<JointAnswer> joints, Function<JointAnswer, Row> told) {
        Map<Row, List<JointAnswer>> alike = new LinkedHashMap<>();
        for (JointAnswer joint : joints) {
            alike.computeIfAbsent(told.apply(joint), row -> new ArrayList<>()).add(joint);
        }
        List<AlikeJoints> rows = new ArrayList<>();
        alike.forEach((row, same) -> rows.add(new AlikeJoints(
                // a joint by itself has its count beside it
                same.size() == 1
                        ? same.get(0).mark()
                        : String.join(", ", same.stream().map(AlikeJoints::mark).toList()),
                same.stream().mapToLong(JointAnswer::count).sum(),
                row)));
        return rows;
    }

    /** Whether the marks take a row of their own, above what is told of them: they would fill a narrow column. */
    public boolean manyMarks() {
        return marks.length() > LONGEST_IN_COLUMN;
    }

    private static String mark(JointAnswer joint) {
        return joint.count() == 1 ? joint.mark() : joint.mark() + " (" + joint.count() + ")";
    }
}
