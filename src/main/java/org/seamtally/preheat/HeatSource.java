package org.seamtally.preheat;

import java.util.Optional;
import org.seamtally.catalogue.Fuel;

/**
 * What heats the joint: a fuel's flame, or electricity (pads or induction) where no fuel is named.
 *
 * @param fuel empty for electricity
 */
public record HeatSource(Optional<Fuel> fuel) {

    /** The word that requests use for electric heat. */
    public static final String ELECTRICITY = "electricity";

    /** Electric heat. */
    public static HeatSource electricity() {
        return new HeatSource(Optional.empty());
    }

    /** A flame. */
    public static HeatSource of(Fuel fuel) {
        return new HeatSource(Optional.of(fuel));
    }

    /** The word that requests use. */
    public String name() {
        return fuel.map(Fuel::name).orElse(ELECTRICITY);
    }
}
