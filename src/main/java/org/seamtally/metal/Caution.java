package org.seamtally.metal;

import java.util.regex.Pattern;
import org.seamtally.quantity.Phrase;
import org.seamtally.quantity.UnitSystem;

/**
 * Something the estimator should know.
 *
 * @param cause a stable word, lower case with hyphens
 * @param text plain words
 */
public record Caution(String cause, Phrase text) {

    private static final Pattern CAUSE = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

    /** Words that have no quantities in them. */
    public Caution(String cause, String text) {
        this(cause, Phrase.of(text));
    }

    /** @throws IllegalArgumentException where the cause is no word of that kind or the text is blank */
    public Caution {
        if (!CAUSE.matcher(cause).matches() || text.isBlank()) {
            throw new IllegalArgumentException(
                    "\"" + cause + "\" with \"" + text.in(UnitSystem.SI) + "\" is no caution");
        }
    }
}
