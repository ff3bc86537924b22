package org.seamtally.quantity;

import java.util.List;

/** A text that is not the quantity that was due. The key says what is wrong with it; the message says it in words. */
public final class QuantityException extends IllegalArgumentException {

    /** Nothing was given. */
    public static final String EMPTY = "empty";
    /** The text is longer than any quantity. */
    public static final String TOO_LONG = "too-long";
    /** A bare number. */
    public static final String UNIT_MISSING = "unit-missing";
    /** No unit here is spelled so. */
    public static final String UNIT_UNKNOWN = "unit-unknown";
    /** A unit of something else, such as a length where a pressure is due. */
    public static final String UNIT_OF_ANOTHER_KIND = "unit-of-another-kind";
    /** What stands before the unit is no number. */
    public static final String NUMBER_MALFORMED = "number-malformed";
    /** Not a number, infinite, or outside what double precision holds. */
    public static final String NUMBER_NOT_FINITE = "number-not-finite";
    /** A temperature below absolute zero. */
    public static final String NUMBER_OUT_OF_PHYSICS = "number-out-of-physics";

    private static final long serialVersionUID = 1L;

    // 64 characters hold any quantity people write; the rest is not worth carrying back to them
    private static final int LONGEST_QUOTED = 64;

    private final String key;
    private final String given;
    private final List<String> taken;

    QuantityException(String key, String given, List<String> taken, String message) {
        super(message);
        this.key = key;
        this.given = shorten(given);
        this.taken = List.copyOf(taken);
    }

    /** What is wrong: one of the keys above. */
    public String key() {
        return key;
    }

    /** The text as it was given, cut after 64 characters. */
    public String given() {
        return given;
    }

    /** The units that are taken here. */
    public List<String> taken() {
        return taken;
    }

    static String shorten(String text) {
        return text.length() <= LONGEST_QUOTED ? text : text.substring(0, LONGEST_QUOTED) + "…";
    }
}
