package org.seamtally.metal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.seamtally.catalogue.Steel;
import org.seamtally.catalogue.Steels;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;
import org.seamtally.quantity.PhrasePart;

/**
 * The strip beside the seam where quenched-and-tempered tube has been heated above its temper and has lost strength: a
 * range, since how much is lost depends on heat, time and section. Common practice of the trade, no source, for the rule;
 * the normalized tube's strength is MIL-HDBK-5's, from memory.
 *
 * @param least tensile strength to reckon with, Pa: the normalized tube's; empty where the catalogue has no normalized form
 * @param greatest Pa, the tube's own least strength; empty where it is not known
 * @param reason in plain words
 */
public record SoftenedZone(OptionalDouble least, OptionalDouble greatest, Phrase reason) {

    /** 0.188 in, read and converted elsewhere, is the same wall only to the last bits. */
    private static final double LAST_BITS = 1 + 1e-9;

    /** Normalized chromium-molybdenum tube of heavier wall than 0.188 in is specified at 90 ksi: MIL-HDBK-5, from memory. */
    private static final double HEAVY_WALL = 0.188 * Customary.METRES_AN_INCH * LAST_BITS;

    private static final double HEAVY_WALL_STRENGTH = 90 * Customary.PASCALS_A_KSI;

    /**
     * The softened zone of a tube.
     *
     * @param base the tube's steel
     * @param wall m, above 0
     * @return empty for a steel that is not quenched and tempered: heat does not take from it what it never got
     */
    public static Optional<SoftenedZone> of(BaseMetal base, double wall) {
        Given.positive("wall", wall);
        if (!base.quenchedAndTempered()) {
            return Optional.empty();
        }
        OptionalDouble least = normalizedStrength(base, wall);
        return Optional.of(new SoftenedZone(least, base.tensileStrength(), reason(base, least)));
    }

    private static OptionalDouble normalizedStrength(BaseMetal base, double wall) {
        Optional<Steel> normalized = base.normalizedForm().flatMap(Steels::find);
        if (normalized.isEmpty() || normalized.get().leastTensileStrength().isEmpty()) {
            return OptionalDouble.empty();
        }
        double strength = normalized.get().leastTensileStrength().getAsDouble();
        return OptionalDouble.of(wall > HEAVY_WALL ? Math.min(strength, HEAVY_WALL_STRENGTH) : strength);
    }

    private static Phrase reason(BaseMetal base, OptionalDouble least) {
        String start = "The tube was quenched and tempered; beside the seam it gets hotter than its temper and loses"
                + " strength";
        String end = " The preheat and the filler do not give it back, only a heat treatment of the whole part does.";
        if (least.isEmpty()) {
            return Phrase.of(start + ". How much is not known here: ask the steel's producer." + end);
        }
        PhrasePart from = base.tensileStrength().isPresent()
                ? Phrase.measured(Dimension.STRESS, base.tensileStrength().getAsDouble())
                : Phrase.of("the tube's own strength");
        return Phrase.of(
                start + ", from {} down towards the {} of the normalized tube." + end,
                from,
                Phrase.measured(Dimension.STRESS, least.getAsDouble()));
    }
}
