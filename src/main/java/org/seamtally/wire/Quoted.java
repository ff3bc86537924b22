package org.seamtally.wire;

import java.nio.charset.StandardCharsets;

/** A sender's own text as it is quoted back to him: short, and of whole letters only, so that any reader can read it. */
final class Quoted {

    // nobody needs more of his own text back to find it
    private static final int LONGEST = 64;

    private Quoted() {}

    /** The text, cut short where it is long. */
    static String cut(String text) {
        if (text.length() <= LONGEST) {
            return whole(text);
        }
        int end = Character.isHighSurrogate(text.charAt(LONGEST - 1)) ? LONGEST - 1 : LONGEST;
        return whole(text.substring(0, end)) + "…";
    }

    /** The same with a question mark for each half of a letter, which JSON can spell ("\ud800") and UTF-8 cannot. */
    static String whole(String text) {
        return new String(text.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
    }
}
