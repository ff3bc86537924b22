package org.seamtally.quantity;

/** Blanks of any kind, the no-break space of a word processor included. */
final class Blanks {

    private Blanks() {}

    static boolean isBlank(char character) {
        return Character.isWhitespace(character) || Character.isSpaceChar(character);
    }

    static String strip(String text) {
        int start = 0;
        int end = text.length();
        while (start < end && isBlank(text.charAt(start))) {
            start++;
        }
        while (end > start && isBlank(text.charAt(end - 1))) {
            end--;
        }
        return text.substring(start, end);
    }
}
