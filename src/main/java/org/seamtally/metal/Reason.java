package org.seamtally.metal;

import org.seamtally.quantity.Phrase;

/**
 * One reason for a filler's place.
 *
 * @param step the step of the ranking it speaks to
 * @param text plain words
 */
public record Reason(Step step, Phrase text) {

    /** The steps of the ranking, in their order: a decision of this project. */
    public enum Step {
        /** Not cautioned for cracking goes before cautioned. */
        CRACKING,
        /** Then the least advised preheat. */
        PREHEAT,
        /** Then the strength nearest the base's from below; above it after all below; unknown last. */
        STRENGTH,
        /** Then the classification, by its letters. */
        NAME
    }
}
