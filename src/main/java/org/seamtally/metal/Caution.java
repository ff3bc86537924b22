package org.seamtally.metal;

import org.seamtally.quantity.Phrase;
import org.seamtally.quantity.UnitSystem;

/**
 * Something the estimator should know.
 *
 * @param cause a stable word, lower case with hyphens
 * @param text plain words
 */
public record Caution(String cause, Phrase text) {

    /** Words that have no quantities in them. */
    public Caution(String cause, String text) {
        this(cause, Phrase.of(text));
    }

    /** @throws IllegalArgumentException where the cause is no word of that kind or the text is blank */
    public Caution {
        if (!cause.matches("[a-z0-9]+(-[a-z0-9]+)*") || text.in(UnitSystem.SI).isBlank()) {
            throw new IllegalArgumentException(
                    "\"" + cause + "\" with \"" + text.in(UnitSystem.SI) + "\" is no caution");
        }
    }
}
