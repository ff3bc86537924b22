package org.seamtally.metal;

/**
 * Something the estimator should know.
 *
 * @param cause a stable word, lower case with hyphens
 * @param text plain words
 */
public record Caution(String cause, String text) {

    /** @throws IllegalArgumentException where the cause is no word of that kind or the text is blank */
    public Caution {
        if (!cause.matches("[a-z0-9]+(-[a-z0-9]+)*") || text.isBlank()) {
            throw new IllegalArgumentException("\"" + cause + "\" with \"" + text + "\" is no caution");
        }
    }
}
