package org.seamtally.frame;

import java.util.List;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * A default that was used.
 *
 * @param path of the field that was left out
 * @param value what was taken instead
 * @param because on whose word
 * @param joints marks of the joints it was used for; empty where it is the whole request's
 */
public record Assumption(String path, Value value, Phrase because, List<String> joints) {

    /** What was taken: words or numbers as they are, or a quantity to be shown in the reader's units. */
    public sealed interface Value permits Words, Measured {}

    /** Taken as it stands. */
    public record Words(String text) implements Value {}

    /** A quantity, in SI. */
    public record Measured(Dimension dimension, double value) implements Value {}
}
