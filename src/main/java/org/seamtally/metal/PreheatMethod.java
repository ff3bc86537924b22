package org.seamtally.metal;

import java.util.List;
import java.util.OptionalDouble;
import org.seamtally.quantity.Phrase;

/** A published method that asks for a preheat. */
public sealed interface PreheatMethod permits EnMethodB, HydrogenControl {

    /** The method's name, for the user. */
    String name();

    /** The least preheat temperature, K; empty where the method asks for none. */
    OptionalDouble leastTemperature();

    /** What lies outside the range the method is meant for; empty where all lies within. */
    List<Phrase> outside();

    /** Whether all lies in the range the method is meant for. */
    default boolean insideRange() {
        return outside().isEmpty();
    }
}
