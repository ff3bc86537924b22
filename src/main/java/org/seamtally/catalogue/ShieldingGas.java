package org.seamtally.catalogue;

import java.util.List;

/**
 * A shielding gas as it is bought: a pure gas or a mixture.
 *
 * @param name the word a request uses, such as {@code argon}
 * @param parts the pure gases in it; the mole fractions add up to 1
 * @param source where the mixture is named
 * @param status how well that source is known
 */
public record ShieldingGas(String name, List<Part> parts, String source, Status status) {

    /** @throws IllegalArgumentException where the mole fractions do not add up to 1 */
    public ShieldingGas {
        parts = List.copyOf(parts);
        double sum = parts.stream().mapToDouble(Part::moleFraction).sum();
        // the fractions are decimals of two or three digits: anything further off is a misprint
        if (Math.abs(sum - 1) > 1e-9) {
            throw new IllegalArgumentException(name + ": the mole fractions add up to " + sum);
        }
    }

    /**
     * One gas of a mixture.
     *
     * @param gas the pure gas
     * @param moleFraction above 0, at most 1
     */
    public record Part(GasSpecies gas, double moleFraction) {

        /** @throws IllegalArgumentException where the fraction is not in (0, 1] */
        public Part {
            if (!(moleFraction > 0 && moleFraction <= 1)) {
                throw new IllegalArgumentException(gas.name() + ": mole fraction " + moleFraction);
            }
        }
    }
}
