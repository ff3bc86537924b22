package org.seamtally.catalogue;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A base steel, in one condition.
 *
 * @param name the word a request uses, such as {@code 4130}
 * @param title what it is, in plain words
 * @param heatTreatment condition of delivery
 * @param limits what its standard allows, by element
 * @param typical a typical analysis, within the limits
 * @param leastTensileStrength Pa, empty where the standard guarantees none
 * @param greatestTensileStrength Pa, empty where the standard names none
 * @param leastYieldStrength Pa, empty where the standard guarantees none
 * @param normalizedForm the row of the same steel normalized, for a quenched-and-tempered one that has such a row
 * @param standard where the steel is specified
 * @param source where the figures stand
 * @param status how well that source is known
 */
public record Steel(
        String name,
        String title,
        HeatTreatment heatTreatment,
        Map<Element, Limits> limits,
        Composition typical,
        OptionalDouble leastTensileStrength,
        OptionalDouble greatestTensileStrength,
        OptionalDouble leastYieldStrength,
        Optional<String> normalizedForm,
        String standard,
        String source,
        Status status) {

    /**
     * @throws IllegalArgumentException where the typical analysis is outside the limits, or the strengths are not in
     *     the order yield, least, greatest
     */
    public Steel {
        limits = Map.copyOf(limits);
        Specification.check(name, limits, typical, leastYieldStrength, leastTensileStrength);
        Specification.inOrder(name, leastTensileStrength, greatestTensileStrength);
    }
}
