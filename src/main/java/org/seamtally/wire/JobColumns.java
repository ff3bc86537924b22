package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The columns of a job table, a joint a row: read off the requests of the joint kinds, so that none is listed twice. */
public final class JobColumns {

    /** The frame's name: rows of one frame have the same. */
    static final String FRAME = "frame";

    /** Frames in the order. */
    static final String QUANTITY = "quantity";

    /** The joint's kind. */
    static final String KIND =
            JointRequest.class.getAnnotation(JsonTypeInfo.class).property();

    private static final Map<String, JobColumn> ALL = all();

    private static final Pattern JOINT = Pattern.compile("frame\\.joints\\[([0-9]+)](?:\\.(.+))?");

    private JobColumns() {}

    private static Map<String, JobColumn> all() {
        Map<String, JobColumn> all = new LinkedHashMap<>();
        add(all, new JobColumn(FRAME, FRAME, "text", null));
        add(all, new JobColumn(QUANTITY, QUANTITY, "whole-number", null));
        add(all, new JobColumn(KIND, KIND, "word", null));
        for (Class<?> kind : JointKinds.classes()) {
            FieldRule.eachDeep(kind, (rule, field) -> {
                Within within = field.getAnnotation(Within.class);
                add(
                        all,
                        new JobColumn(
                                JobColumn.words(rule.field()),
                                rule.field(),
                                rule.holds(),
                                within == null ? null : within.value()));
            });
        }
        return all;
    }

    private static void add(Map<String, JobColumn> all, JobColumn column) {
        JobColumn other = all.putIfAbsent(column.words(), column);
        if (other != null && !other.equals(column)) {
            throw new IllegalStateException("two fields make the column " + column.words());
        }
    }

    /** Every column, those of quantities with a unit that they take. */
    public static List<String> headers() {
        return ALL.values().stream()
                .map(column -> column.dimension() == null
                        ? column.words()
                        : column.words() + " ["
                                + column.dimension().unitsTaken().get(0) + "]")
                .toList();
    }

    /** Words of every column, without units. */
    static List<String> words() {
        return List.copyOf(ALL.keySet());
    }

    /** Null where no column is called so. */
    static JobColumn find(String words) {
        return ALL.get(words);
    }

    /** A problem with the paths of its violations turned into where they stand in a table; as it is where there is none. */
    static ProblemReport placed(ProblemReport problem, JobFrame.Places places) {
        if (places == null || problem.violations() == null) {
            return problem;
        }
        List<Violation> placed = new ArrayList<>(problem.violations().size());
        for (Violation violation : problem.violations()) {
            placed.add(placed(violation, places));
        }
        return new ProblemReport(problem.type(), problem.title(), problem.status(), problem.detail(), placed);
    }

    private static Violation placed(Violation violation, JobFrame.Places places) {
        Matcher joint = JOINT.matcher(violation.path());
        if (!joint.matches()) {
            return at(violation, ofFrame(violation.path(), places));
        }
        String row = "line " + places.lines().get(Integer.parseInt(joint.group(1)));
        if (joint.group(2) == null) {
            return at(violation, row);
        }
        String column = header(JobColumn.words(joint.group(2)), places);
        if (violation.key().equals(Violation.Key.UNKNOWN_FIELD)) {
            // the request's own words for its fields are not those of a table
            return new Violation(
                    row + ", " + column,
                    violation.key(),
                    "this kind of joint has no such field: its cell stays empty",
                    null,
                    null);
        }
        return at(violation, row + ", " + column);
    }

    private static String ofFrame(String path, JobFrame.Places places) {
        String first = "line " + places.lines().get(0);
        return switch (path) {
            case "frame.name" -> first + ", " + header(FRAME, places);
            case "frame.quantity" -> first + ", " + header(QUANTITY, places);
            case "frame", "frame.joints" -> first;
            default -> path;
        };
    }

    /** A row is told by its line: the mark of its joint stands in it. */
    private static Violation at(Violation violation, String place) {
        return new Violation(place, violation.key(), violation.message(), violation.given(), violation.taken());
    }

    /** The header as it was sent; the column's words where the table has no such column. */
    private static String header(String words, JobFrame.Places places) {
        return places.columns().stream()
                .filter(column -> JobHeader.Cell.of(column).words().equals(words))
                .findFirst()
                .orElse(words);
    }
}
