package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** One thing wrong with what was sent. */
@Schema(description = "One thing wrong with what was sent.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Violation(
        @Schema(
                description = "Where, such as frame.joints[2].branch.wall; empty for the whole body.",
                required = true,
                examples = "frame.joints[2].branch.wall")
        String path,

        @Schema(description = "A stable word for what is wrong.", required = true, examples = "out-of-range")
        String key,

        @Schema(description = "Plain words that say what is taken.", required = true)
        String message,

        @Schema(description = "What was given, cut after 64 characters; absent where nothing was.")
        String given,

        @Schema(description = "What is taken here: units, words or field names.")
        List<String> taken,

        @Schema(description = "Mark of the joint that it is about; absent where it has none.", examples = "R1")
        String joint) {

    /** One that is about no joint with a mark, or not yet known to be. */
    public Violation(String path, String key, String message, String given, List<String> taken) {
        this(path, key, message, given, taken, null);
    }

    /** The same about a joint. */
    Violation on(String mark) {
        return new Violation(path, key, message, given, taken, mark);
    }

    /** The words that keys are made of, those of a quantity's text apart. */
    public static final class Key {
        public static final String MISSING = "missing";
        public static final String SHAPE = "wrong-shape";
        public static final String UNKNOWN_FIELD = "unknown-field";
        public static final String UNKNOWN_WORD = "unknown-word";
        public static final String OUT_OF_RANGE = "out-of-range";
        public static final String NOT_TEXT = "not-text";
        public static final String NOT_A_NUMBER = "not-a-number";
        public static final String NOT_WHOLE = "not-whole";
        public static final String NOT_A_DATE = "not-a-date";
        public static final String NOT_EFFECTIVE = "not-effective-yet";
        public static final String NOT_A_TRUTH = "not-true-or-false";
        public static final String TOO_LONG = "too-long";
        public static final String TOO_MANY = "too-many";
        public static final String EMPTY = "empty";
        public static final String DUPLICATE = "duplicate";
        public static final String CONTRADICTION = "contradiction";
        public static final String NOT_JSON = "not-json";
        public static final String TOO_DEEP = "too-deep";
        /** A file of another sort: compressed, a workbook, a table with another separator. */
        public static final String NOT_THIS_FORM = "not-this-form";

        public static final String NOT_UTF_8 = "not-utf-8";
        public static final String LINE_ENDS = "line-ends";
        public static final String QUOTES = "quotes";
        public static final String CELLS = "number-of-cells";
        public static final String UNIT_IN_CELL = "unit-in-cell";
        public static final String FRAME_RETURNS = "frame-returns";
        public static final String TIME_LIMIT = "time-limit";

        private Key() {}
    }
}
