package org.seamtally.metal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamtally.catalogue.Composition;
import org.seamtally.quantity.Decimals;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * What the review finds of the tube itself, whatever the filler.
 *
 * @param metal the tube's steel
 * @param carbonEquivalents of it
 * @param idealDiameter of it
 * @param martensiteStart of it
 * @param cooling from the start temperature
 * @param coolingRate from the start temperature
 * @param hardness beside the seam, from the start temperature
 * @param softenedZone for a quenched-and-tempered tube
 * @param cautions on the tube
 */
public record BaseReview(
        BaseMetal metal,
        CarbonEquivalents carbonEquivalents,
        IdealDiameter idealDiameter,
        MartensiteStart martensiteStart,
        CoolingTime cooling,
        CoolingRate coolingRate,
        Hardness hardness,
        Optional<SoftenedZone> softenedZone,
        List<Caution> cautions) {

    /**
     * HV 10: the greatest hardness that EN ISO 15614-1 allows in a qualification test of common structural steel welded
     * without heat treatment, from memory. Shown as a mark to measure by; other steels and procedures have other limits.
     */
    private static final double MARK = 380;

    /** Copies the list. */
    public BaseReview {
        cautions = List.copyOf(cautions);
    }

    static BaseReview of(BaseMetal base, Analysed tube, WeldingConditions conditions) {
        Composition steel = base.composition();
        CoolingTime cooling = CoolingTime.of(
                conditions.arcEnergy(), conditions.startTemperature(), conditions.wall(), conditions.shape());
        CoolingRate rate = CoolingRate.of(conditions.arcEnergy(), conditions.startTemperature(), conditions.wall());
        Hardness hardness = Hardness.of(steel, cooling.time());
        Optional<SoftenedZone> softened = SoftenedZone.of(base, conditions.wall());
        IdealDiameter diameter = tube.idealDiameter();
        MartensiteStart start = tube.martensiteStart();
        List<Caution> cautions = new ArrayList<>();
        if (base.heatTreatment().isEmpty()) {
            cautions.add(new Caution(
                    "condition-not-given",
                    "An analysis says nothing of the tube's heat treatment or strength: quenched-and-tempered tube loses"
                            + " strength beside the seam and asks for preheat, which is not counted here."));
        }
        softened.ifPresent(zone -> cautions.add(new Caution("softened-zone", zone.reason())));
        if (hardness.greatest() > MARK) {
            cautions.add(new Caution(
                    "hard-zone",
                    Phrase.of(
                            "Beside the seam the base metal may reach " + Decimals.of(hardness.least(), 0) + " to "
                                    + Decimals.of(hardness.greatest(), 0) + " HV"
                                    + ", welded from {}; 380 HV is what EN ISO 15614-1 allows for structural steel that is"
                                    + " not heat treated after welding. Hydrogen must be kept out; the qualified procedure"
                                    + " decides.",
                            Phrase.measured(Dimension.TEMPERATURE, conditions.startTemperature()))));
        }
        if (conditions.startTemperature() < PreheatAdvice.LEAST_METAL_TEMPERATURE) {
            cautions.add(new Caution(
                    "cold-metal",
                    Phrase.of(
                            "The metal is colder than {}: warm it and let it dry before welding.",
                            PreheatAdvice.COLD)));
        }
        outsideRange(diameter, start, hardness).ifPresent(cautions::add);
        return new BaseReview(
                base, tube.carbonEquivalents(), diameter, start, cooling, rate, hardness, softened, cautions);
    }

    private static Optional<Caution> outsideRange(IdealDiameter diameter, MartensiteStart start, Hardness hardness) {
        List<String> outside = new ArrayList<>();
        diameter.outside().forEach(text -> outside.add("ideal diameter (ASTM A255): " + text));
        start.outside().forEach(text -> outside.add("martensite start (Andrews): " + text));
        outside.addAll(hardness.outside());
        return outside.isEmpty()
                ? Optional.empty()
                : Optional.of(new Caution(
                        "outside-range",
                        "The tube's analysis lies outside the range of a formula; its figure is an extrapolation: "
                                + String.join("; ", outside) + "."));
    }
}
