package org.seamtally.frame;

import java.util.Optional;
import org.seamtally.quantity.Phrase;

/**
 * Something to look at before anyone relies on the figures.
 *
 * @param cause a stable word
 * @param text plain words
 * @param joint mark of the joint; empty where it is the whole frame's
 */
public record Caution(String cause, Phrase text, Optional<String> joint) {

    /** Words that have no quantities in them. */
    public Caution(String cause, String text, Optional<String> joint) {
        this(cause, Phrase.of(text), joint);
    }
}
