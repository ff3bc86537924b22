package org.seamtally.catalogue;

import java.util.Map;
import java.util.OptionalDouble;

/**
 * A filler rod for gas tungsten arc welding.
 *
 * @param classification the standard's name for it, such as {@code ER70S-2}
 * @param title what it is, in plain words
 * @param limits what its standard allows of the rod, by element
 * @param typical a typical analysis of the rod; where a limit is only a maximum it is not that limit's middle
 * @param leastTensileStrength of the undiluted weld metal, Pa; empty where the standard names none
 * @param leastYieldStrength of the undiluted weld metal, Pa; empty where the standard names none
 * @param testCondition the condition in which the standard tests that strength: {@code as welded} or
 *     {@code after post-weld heat treatment}
 * @param standard where the filler is specified
 * @param source where the figures stand
 * @param status how well that source is known
 */
public record Filler(
        String classification,
        String title,
        Map<Element, Limits> limits,
        Composition typical,
        OptionalDouble leastTensileStrength,
        OptionalDouble leastYieldStrength,
        String testCondition,
        String standard,
        String source,
        Status status) {

    /**
     * @throws IllegalArgumentException where the typical analysis is outside the limits, or the yield strength is above
     *     the tensile strength
     */
    public Filler {
        limits = Map.copyOf(limits);
        Specification.check(classification, limits, typical, leastYieldStrength, leastTensileStrength);
    }
}
