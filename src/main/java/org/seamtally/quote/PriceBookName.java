package org.seamtally.quote;

import java.text.Normalizer;
import java.util.regex.Pattern;

/**
 * What a shop calls a price book. Letters that can be written in two ways are taken in their composed form.
 *
 * @param text letters, digits, blanks, dots, hyphens and underscores, at most {@value #LONGEST}; a letter or digit first and last
 */
public record PriceBookName(String text) implements Comparable<PriceBookName> {

    /** A name is said over a counter. */
    public static final int LONGEST = 60;

    /** What a name is made of, in words. */
    public static final String TAKEN = "letters, digits, blanks, dots, hyphens and underscores, at most " + LONGEST
            + " of them, with a letter or digit first and last";

    private static final Pattern NAME =
            Pattern.compile("[\\p{L}\\p{N}]([\\p{L}\\p{M}\\p{N} ._-]*[\\p{L}\\p{M}\\p{N}])?");

    /** @throws IllegalArgumentException where it is no name */
    public PriceBookName {
        text = composed(text);
        if (!isFit(text)) {
            throw new IllegalArgumentException("a price book's name is " + TAKEN);
        }
    }

    /** Whether a text is a name. */
    public static boolean isName(String text) {
        return isFit(composed(text));
    }

    private static String composed(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC);
    }

    private static boolean isFit(String composed) {
        return composed.length() <= LONGEST && NAME.matcher(composed).matches();
    }

    @Override
    public int compareTo(PriceBookName other) {
        return text.compareTo(other.text);
    }

    @Override
    public String toString() {
        return text;
    }
}
