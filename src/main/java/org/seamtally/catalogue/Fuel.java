package org.seamtally.catalogue;

import java.util.OptionalDouble;

/**
 * A fuel that heats steel before welding. Electricity is a source of heat too, but no fuel.
 *
 * @param name the word a request uses, such as {@code propane}
 * @param lowerHeatingValue J/kg, above 0: heat of burning with the water leaving as vapour
 * @param gasDensity kg/m³ as a gas at 15 °C and 1 atm, above 0; empty for what is never burned as a gas
 * @param sold how the trade prices it
 * @param source where the figures stand
 * @param status how well that source is known
 */
public record Fuel(
        String name, double lowerHeatingValue, OptionalDouble gasDensity, Sold sold, String source, Status status) {

    /** What a fuel's price goes by. */
    public enum Sold {
        /** From a bottle that is weighed. */
        BY_MASS,
        /** From a pipe or a bottle that is metered. */
        BY_VOLUME
    }

    /** @throws IllegalArgumentException where a figure is no fuel's, or a metered fuel has no density */
    public Fuel {
        if (!(lowerHeatingValue > 0 && lowerHeatingValue < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + ": heating value " + lowerHeatingValue + " J/kg");
        }
        if (gasDensity.isPresent()
                && !(gasDensity.getAsDouble() > 0 && gasDensity.getAsDouble() < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + ": gas density " + gasDensity.getAsDouble() + " kg/m3");
        }
        if (sold == Sold.BY_VOLUME && gasDensity.isEmpty()) {
            throw new IllegalArgumentException(name + " is sold by volume: its gas density is needed");
        }
    }
}
