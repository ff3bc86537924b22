package org.seamtally.metal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;
import org.seamtally.quantity.PhrasePart;

/**
 * Whether preheat is due, by two published methods and by the practice of the trade where neither is meant. The qualified
 * welding procedure stands over all of it.
 *
 * @param advised preheat temperature, K; empty where none is advised
 * @param governing what the advice rests on
 * @param why in plain words
 * @param en EN 1011-2 method B
 * @param hydrogenControl AWS D1.1
 * @param after what the advised preheat does to cooling and hardness; empty where none is advised, or where it is no longer
 *     below the 500 °C at which t₈₅ ends
 */
public record PreheatAdvice(
        OptionalDouble advised,
        Governing governing,
        Phrase why,
        EnMethodB en,
        HydrogenControl hydrogenControl,
        Optional<After> after) {

    /** Whatever else is advised the metal is dry and at least this warm, K (16 °C, 60 °F): common practice, no source. */
    public static final double LEAST_METAL_TEMPERATURE = 289.15;

    /** The same in words. */
    static final PhrasePart COLD = Phrase.either("16 °C", "60 °F");

    /** Up to this wall, m, both methods lie outside their range: the least wall of AWS D1.1's tubular scope, 1/8 in. */
    static final double THIN_WALL = 3.2e-3;

    /** mL/100 g: class H5 of ISO 3690. */
    static final double LOW_HYDROGEN = 5;

    /** °C, the least preheat of hardenable steel once preheat is due: common practice, no source. */
    private static final double LEAST_PREHEAT = 150;

    /** Where t₈₅ ends, K. */
    private static final double SPAN_END = 773.15;

    /** What an advice rests on. */
    public enum Governing {
        COMMON_PRACTICE,
        EN_1011_2_METHOD_B,
        AWS_D1_1_HYDROGEN_CONTROL
    }

    /**
     * The joint when it is preheated as advised.
     *
     * @param cooling from the preheat temperature
     * @param hardness beside the seam
     */
    public record After(CoolingTime cooling, Hardness hardness) {}

    /** Both methods, in the order they are shown. */
    public List<PreheatMethod> methods() {
        return List.of(en, hydrogenControl);
    }

    /**
     * Advises on a joint.
     *
     * @param base the tube
     * @param rod the filler
     * @param conditions how it is welded
     * @throws IllegalArgumentException where the base's alloy is too high for the hardness formulas
     */
    public static PreheatAdvice of(BaseMetal base, Rod rod, WeldingConditions conditions) {
        return of(WeldedPair.of(base, rod, conditions.dilution()), conditions);
    }

    static PreheatAdvice of(WeldedPair pair, WeldingConditions conditions) {
        CarbonEquivalents ofTube = pair.tube().carbonEquivalents();
        EnMethodB en = EnMethodB.of(ofTube, pair.weldMetal().carbonEquivalents(), conditions);
        HydrogenControl control = HydrogenControl.of(ofTube, conditions);
        List<Phrase> due = reasonsForPreheat(pair.base(), pair.rod(), conditions);
        if (due.isEmpty()) {
            return new PreheatAdvice(
                    OptionalDouble.empty(),
                    Governing.COMMON_PRACTICE,
                    Phrase.of(
                            "No preheat: thin wall, not quenched and tempered, low hydrogen and a filler of the 70 ksi class."
                                    + " Dry and at least {}. Both methods lie outside their range here and do not govern.",
                            COLD),
                    en,
                    control,
                    Optional.empty());
        }
        return theHigher(pair, conditions, en, control, Phrase.join(", ", due));
    }

    /** What takes a joint out of the practice of welding thin tube cold. */
    private static List<Phrase> reasonsForPreheat(BaseMetal base, Rod rod, WeldingConditions conditions) {
        return java.util.stream.Stream.of(
                        when(
                                conditions.wall() > THIN_WALL,
                                Phrase.of("wall above {}", Phrase.either("3.2 mm", "1/8 in"))),
                        when(base.quenchedAndTempered(), Phrase.of("quenched-and-tempered tube")),
                        when(conditions.hydrogen() > LOW_HYDROGEN, Phrase.of("hydrogen above 5 mL/100 g")),
                        when(!rod.ofSeventyKsiClass(), Phrase.of("filler not of the 70 ksi class")))
                .flatMap(Optional::stream)
                .toList();
    }

    private static Optional<Phrase> when(boolean holds, Phrase text) {
        return holds ? Optional.of(text) : Optional.empty();
    }

    private static PreheatAdvice theHigher(
            WeldedPair pair, WeldingConditions conditions, EnMethodB en, HydrogenControl control, Phrase due) {
        double byEn = en.leastTemperature().orElse(0);
        double byControl = control.leastTemperature().orElse(0);
        double byPractice = pair.tube().hardenable() ? Celsius.toKelvin(LEAST_PREHEAT) : 0;
        double highest = Math.max(byPractice, Math.max(byEn, byControl));
        if (highest == 0) {
            return new PreheatAdvice(
                    OptionalDouble.empty(),
                    Governing.COMMON_PRACTICE,
                    Phrase.of(
                            "No preheat: neither method asks for one, and CE(IIW) is not above 0.45 %. Dry and at least {}.",
                            COLD),
                    en,
                    control,
                    Optional.empty());
        }
        Governing governing = highest == byPractice
                ? Governing.COMMON_PRACTICE
                : highest == byEn ? Governing.EN_1011_2_METHOD_B : Governing.AWS_D1_1_HYDROGEN_CONTROL;
        Phrase why = Phrase.of(
                "Preheat to {}, the highest of EN 1011-2 method B ({}), AWS D1.1 hydrogen control ({}) and common"
                        + " practice for hardenable steel ({}). Due because of: {}.",
                temperature(highest),
                described(byEn, en),
                described(byControl, control),
                byPractice == 0 ? Phrase.of("none: CE(IIW) is not above 0.45 %") : temperature(byPractice),
                due);
        return new PreheatAdvice(
                OptionalDouble.of(highest), governing, why, en, control, after(pair.base(), conditions, highest));
    }

    private static Phrase described(double kelvin, PreheatMethod method) {
        PhrasePart figure = kelvin == 0 ? Phrase.of("none") : temperature(kelvin);
        return Phrase.of(method.insideRange() ? "{}" : "{}, outside its range", figure);
    }

    private static PhrasePart temperature(double kelvin) {
        return Phrase.measured(Dimension.TEMPERATURE, kelvin);
    }

    private static Optional<After> after(BaseMetal base, WeldingConditions conditions, double preheat) {
        if (preheat >= SPAN_END) {
            return Optional.empty();
        }
        // metal that is hotter already is not cooled down to the preheat
        double start = Math.max(preheat, conditions.startTemperature());
        CoolingTime cooling = CoolingTime.of(conditions.arcEnergy(), start, conditions.wall(), conditions.shape());
        return Optional.of(new After(cooling, Hardness.of(base.composition(), cooling.time())));
    }
}
