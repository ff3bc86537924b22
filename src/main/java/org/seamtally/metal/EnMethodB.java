package org.seamtally.metal;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * Preheat by EN 1011-2:2001 annex C.3, method B, from memory: a sum of what the analysis, the thickness, the hydrogen and
 * the heat input each ask for. Meant for CET 0.2 to 0.5 %, thickness 10 to 90 mm, hydrogen 1 to 20 mL/100 g and heat input
 * 0.5 to 4 kJ/mm: thin tube lies outside, and the figure there is an extrapolation.
 *
 * @param cet the CET that governs, mass per cent
 * @param fromWeldMetal whether that is the weld metal's (with its allowance) and not the base metal's
 * @param steelPart °C, what the analysis asks for
 * @param thicknessPart °C
 * @param hydrogenPart °C
 * @param heatPart °C
 * @param outside what lies outside the range
 */
public record EnMethodB(
        double cet,
        boolean fromWeldMetal,
        double steelPart,
        double thicknessPart,
        double hydrogenPart,
        double heatPart,
        List<Phrase> outside)
        implements PreheatMethod {

    /**
     * EN 1011-2:2001 C.3.2.2, from memory: the base metal's CET governs where it is this much above the weld metal's; else
     * the weld metal's governs, raised by as much.
     */
    private static final double WELD_METAL_ALLOWANCE = 0.03;

    private static final Range CET = new Range("CET", 0.2, 0.5, "%");
    private static final Range THICKNESS = new Range("thickness", 10, 90, "mm");
    private static final Range HYDROGEN = new Range("hydrogen", 1, 20, "mL/100 g");
    private static final Range HEAT_INPUT = new Range("heat input", 0.5, 4, "kJ/mm");
    private static final double MM = 1e-3;
    private static final double KJ_A_MM = 1e6;

    /** Copies the list. */
    public EnMethodB {
        outside = List.copyOf(outside);
    }

    /**
     * Computes it for a joint.
     *
     * @param base of the base metal
     * @param weldMetal of the diluted weld metal
     * @param conditions wall, hydrogen and heat input
     */
    static EnMethodB of(CarbonEquivalents base, CarbonEquivalents weldMetal, WeldingConditions conditions) {
        CarbonEquivalent ofBase = base.cet();
        CarbonEquivalent ofWeld = weldMetal.cet();
        boolean fromWeldMetal = ofBase.value() < ofWeld.value() + WELD_METAL_ALLOWANCE;
        List<String> beyondCet = (fromWeldMetal ? ofWeld : ofBase).outside();
        return of(
                fromWeldMetal ? ofWeld.value() + WELD_METAL_ALLOWANCE : ofBase.value(),
                fromWeldMetal,
                conditions.wall() * 1e3,
                conditions.hydrogen(),
                conditions.heatInput() * 1e-6,
                beyondCet);
    }

    /**
     * @param d thickness, mm
     * @param hd hydrogen, mL/100 g
     * @param q heat input, kJ/mm
     * @param beyondCet what lies outside the range of CET itself
     */
    static EnMethodB of(double cet, boolean fromWeldMetal, double d, double hd, double q, List<String> beyondCet) {
        List<Phrase> outside = new ArrayList<>();
        beyondCet.forEach(text -> outside.add(Phrase.of(text)));
        CET.outside(cet).map(Phrase::of).ifPresent(outside::add);
        THICKNESS.outside(d, Dimension.LENGTH, MM).ifPresent(outside::add);
        HYDROGEN.outside(hd).map(Phrase::of).ifPresent(outside::add);
        HEAT_INPUT.outside(q, Dimension.ENERGY_PER_LENGTH, KJ_A_MM).ifPresent(outside::add);
        // the four parts are normed so that each is 0 at CET 0.2, a mid thickness, hydrogen near 4 and 1 kJ/mm
        return new EnMethodB(
                cet,
                fromWeldMetal,
                750 * cet - 150,
                160 * Math.tanh(d / 35) - 110,
                62 * Math.pow(hd, 0.35) - 100,
                (53 * cet - 32) * q - 53 * cet + 32,
                outside);
    }

    /** T_p of the standard, °C: the sum of the parts, below the shop's temperature where no preheat is asked for. */
    public double sum() {
        return steelPart + thicknessPart + hydrogenPart + heatPart;
    }

    @Override
    public String name() {
        return "EN 1011-2:2001 method B";
    }

    @Override
    public OptionalDouble leastTemperature() {
        return Preheat.asked(sum());
    }
}
