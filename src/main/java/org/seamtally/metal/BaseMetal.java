package org.seamtally.metal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.HeatTreatment;
import org.seamtally.catalogue.Steel;

/**
 * The steel of the tube.
 *
 * @param name of a steel in the catalogue, or the shop's own word for its analysis
 * @param composition its analysis
 * @param tensileStrength least tensile strength, Pa; empty where it is not known
 * @param heatTreatment its condition; empty where only an analysis is known
 * @param normalizedForm name of the same steel normalized, for a quenched-and-tempered one that has such a row
 */
public record BaseMetal(
        String name,
        Composition composition,
        OptionalDouble tensileStrength,
        Optional<HeatTreatment> heatTreatment,
        Optional<String> normalizedForm) {

    /** @throws IllegalArgumentException where a strength is given that is not positive */
    public BaseMetal {
        tensileStrength.ifPresent(strength -> Given.positive("tensile strength", strength));
    }

    /** A steel whose condition is known. */
    public BaseMetal(
            String name,
            Composition composition,
            OptionalDouble tensileStrength,
            HeatTreatment heatTreatment,
            Optional<String> normalizedForm) {
        this(name, composition, tensileStrength, Optional.of(heatTreatment), normalizedForm);
    }

    /** A steel of which nothing but an analysis is known. */
    public static BaseMetal ofAnalysis(String name, Composition composition) {
        return new BaseMetal(name, composition, OptionalDouble.empty(), Optional.empty(), Optional.empty());
    }

    /** A steel of the catalogue, with its typical analysis. */
    public static BaseMetal of(Steel steel) {
        return new BaseMetal(
                steel.name(),
                steel.typical(),
                steel.leastTensileStrength(),
                steel.heatTreatment(),
                steel.normalizedForm());
    }

    /** Whether heat beside the seam takes strength from it. */
    boolean quenchedAndTempered() {
        return heatTreatment.filter(HeatTreatment.QUENCHED_AND_TEMPERED::equals).isPresent();
    }
}
