package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.QuantityException;

/**
 * A column that a job table may have.
 *
 * @param words its header, without a unit
 * @param path of the field it fills, from the joint; of {@code frame} and {@code quantity} their own word
 * @param holds as {@link FieldRule#holds} has it
 * @param dimension of a quantity; else null
 */
record JobColumn(String words, String path, String holds, Dimension dimension) {

    // what JSON takes for a number (RFC 8259)
    private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][-+]?[0-9]+)?");

    private static final Pattern DECIMAL_COMMA = Pattern.compile("[-+]?[0-9]+,[0-9]+");

    /** A part of a request in words: {@code branch.outsideDiameter} is {@code branch outside diameter}. */
    static String words(String path) {
        StringBuilder words = new StringBuilder(path.length() + 8);
        for (char letter : path.toCharArray()) {
            if (Character.isUpperCase(letter)) {
                words.append(' ');
            }
            words.append(letter == '.' ? ' ' : Character.toLowerCase(letter));
        }
        return words.toString();
    }

    /** What is wrong with a unit of its header; null where it is one that the column takes. */
    Violation unitFault(String where, String header, String unit) {
        if (unit == null) {
            return dimension == null
                    ? null
                    : new Violation(
                            where,
                            QuantityException.UNIT_MISSING,
                            "the unit stands in brackets, such as \"" + words + " ["
                                    + dimension.unitsTaken().get(0) + "]\"",
                            given(header),
                            dimension.unitsTaken());
        }
        if (dimension == null) {
            return new Violation(
                    where,
                    Violation.Key.UNKNOWN_FIELD,
                    "this column has no unit: \"" + words + "\"",
                    given(header),
                    List.of(words));
        }
        // a unit that starts like a number would be taken for a part of the cells' numbers
        boolean letters = !unit.isEmpty() && "0123456789.,-+/".indexOf(unit.charAt(0)) < 0;
        try {
            if (letters) {
                dimension.read("1 " + unit);
                return null;
            }
        } catch (QuantityException e) {
            return new Violation(where, e.key(), Quoted.whole(e.getMessage()), given(header), e.taken());
        }
        return new Violation(
                where,
                unit.isEmpty() ? QuantityException.UNIT_MISSING : QuantityException.UNIT_UNKNOWN,
                "no unit is spelled so",
                given(header),
                dimension.unitsTaken());
    }

    /** What is wrong with a cell that its reader could not tell from the request; null where nothing is. */
    Violation cellFault(String where, String cell, String unit) {
        if (cell.indexOf('\ufffd') >= 0) {
            return new Violation(
                    where, Violation.Key.NOT_UTF_8, "the cell is not UTF-8: save the file as UTF-8", given(cell), null);
        }
        if (dimension != null && bringsUnit(cell)) {
            return new Violation(
                    where,
                    Violation.Key.UNIT_IN_CELL,
                    "the column is in " + unit + ": its cells are numbers without a unit of their own",
                    given(cell),
                    null);
        }
        boolean number = holds.equals("number") || holds.equals("whole-number");
        if (number && DECIMAL_COMMA.matcher(cell).matches()) {
            return new Violation(
                    where,
                    QuantityException.NUMBER_MALFORMED,
                    "a decimal point is taken, and no comma",
                    given(cell),
                    null);
        }
        return null;
    }

    private boolean bringsUnit(String cell) {
        if (cell.chars().allMatch(letter -> letter >= '0' && letter <= '9' || letter == '.')) {
            return false;
        }
        try {
            dimension.read(cell);
            return true;
        } catch (QuantityException e) {
            return e.key().equals(QuantityException.UNIT_UNKNOWN)
                    || e.key().equals(QuantityException.UNIT_OF_ANOTHER_KIND)
                    || e.key().equals(QuantityException.NUMBER_OUT_OF_PHYSICS);
        }
    }

    /** Writes a cell as the token that a request would have in its place. */
    void write(JsonGenerator generator, String cell, String unit) throws IOException {
        switch (holds) {
            case "quantity" -> generator.writeString(unit == null ? cell : cell + " " + unit);
            case "number", "whole-number" -> {
                if (NUMBER.matcher(cell).matches()) {
                    generator.writeNumber(cell);
                } else {
                    generator.writeString(cell);
                }
            }
            case "true-or-false" -> {
                // spreadsheets write TRUE
                String word = cell.toLowerCase(Locale.ROOT);
                if (word.equals("true") || word.equals("false")) {
                    generator.writeBoolean(word.equals("true"));
                } else {
                    generator.writeString(cell);
                }
            }
            default -> generator.writeString(cell);
        }
    }

    static String given(String cell) {
        return "\"" + Quoted.cut(cell) + "\"";
    }
}
