package org.seamtally.gas;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;

/**
 * Set-ups under one duty, each beside the first: what they throw away a year, whether their setting stands, when they
 * have paid for themselves.
 *
 * @param duty what they work
 * @param setUps in the order given
 */
public record SetUpComparison(Duty duty, List<ComparedSetUp> setUps) {

    /** One alone compares with nothing. */
    public static final int FEWEST = 2;

    /** A decision of this project: more than fits a table that anyone reads. */
    public static final int MOST = 50;

    public SetUpComparison {
        setUps = List.copyOf(setUps);
    }

    /**
     * Compares.
     *
     * @param duty what they work
     * @param given 2 to 50, with different names; the first is what the others are measured against
     * @param gasPrice of a m³ at the reference state, where it is known
     * @param starts gives the start of a set-up on a filled hose: {@link StartTransient#of}, or a store of known ones
     * @throws IllegalArgumentException where there are too few or too many, or two of one name
     */
    public static SetUpComparison of(
            Duty duty, List<NamedSetUp> given, Optional<BigDecimal> gasPrice, Function<SetUp, StartTransient> starts) {
        if (given.size() < FEWEST || given.size() > MOST) {
            throw new IllegalArgumentException(
                    "a comparison takes " + FEWEST + " to " + MOST + " set-ups, not " + given.size());
        }
        Set<String> names = new HashSet<>();
        for (NamedSetUp setUp : given) {
            if (!names.add(setUp.name())) {
                throw new IllegalArgumentException("two set-ups are called " + setUp.name());
            }
        }
        if (gasPrice.isPresent() && gasPrice.get().signum() < 0) {
            throw new IllegalArgumentException("gas cannot cost " + gasPrice.get());
        }
        List<ComparedSetUp> compared = new ArrayList<>();
        for (NamedSetUp setUp : given) {
            StartTransient filled = starts.apply(setUp.setUp());
            StartTransient repeated = filled.repeated(duty.gasOnTime(), duty.gasOffTime());
            compared.add(new Beside(duty, gasPrice, compared.stream().findFirst()).compare(setUp, filled, repeated));
        }
        return new SetUpComparison(duty, compared);
    }

    /** The set-up whose setting stands and that takes the least gas; empty where none stands. */
    public Optional<ComparedSetUp> best() {
        return setUps.stream()
                .filter(s -> s.steady().stands())
                .min(Comparator.comparingDouble(ComparedSetUp::volumePerYear));
    }

    /** How a set-up compares with the first, if it is not the first itself. */
    private record Beside(Duty duty, Optional<BigDecimal> gasPrice, Optional<ComparedSetUp> first) {

        ComparedSetUp compare(NamedSetUp given, StartTransient filled, StartTransient repeated) {
            GasUse perStart = duty.perStart(repeated);
            double perYear = perStart.total() * duty.startsPerYear();
            OptionalDouble saved = first.isEmpty()
                            || !filled.steady().reachable()
                            || !first.get().steady().reachable()
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(first.get().volumePerYear() - perYear);
            OptionalDouble payback = payback(given, saved);
            OptionalDouble shifts =
                    payback.isEmpty() ? payback : OptionalDouble.of(payback.getAsDouble() / duty.startsPerShift());
            return new ComparedSetUp(
                    given,
                    filled,
                    repeated,
                    perStart,
                    perYear,
                    saved,
                    gasPrice.map(price -> price.multiply(new BigDecimal(perYear))),
                    saved.isEmpty()
                            ? Optional.empty()
                            : gasPrice.map(price -> price.multiply(new BigDecimal(saved.getAsDouble()))),
                    payback,
                    shifts,
                    verdict(filled, perStart, saved, payback, shifts));
        }

        /** The price over what one start saves. */
        private OptionalDouble payback(NamedSetUp given, OptionalDouble savedPerYear) {
            if (given.price().isEmpty() || gasPrice.isEmpty() || savedPerYear.isEmpty()) {
                return OptionalDouble.empty();
            }
            double savedPerStart = savedPerYear.getAsDouble()
                    / duty.startsPerYear()
                    * gasPrice.get().doubleValue();
            return savedPerStart > 0
                    ? OptionalDouble.of(given.price().get().doubleValue() / savedPerStart)
                    : OptionalDouble.empty();
        }

        private Verdict verdict(
                StartTransient filled,
                GasUse perStart,
                OptionalDouble saved,
                OptionalDouble payback,
                OptionalDouble shifts) {
            SteadyState steady = filled.steady();
            SetUp setUp = filled.setUp();
            List<Verdict.Reason> reasons = new ArrayList<>();
            if (!steady.reachable()) {
                reasons.add(reason(Verdict.Key.FLOW_NOT_REACHED, Map.of("share", steady.flow() / setUp.flow())));
                return new Verdict(Verdict.Standing.NOT_REACHABLE, reasons);
            }
            reasons.add(reason(
                    steady.stands() ? Verdict.Key.SETTING_STANDS : Verdict.Key.SETTING_DRIFTS,
                    Map.of("drift", steady.drift(), "allowed", setUp.allowedDrift())));
            if (saved.isPresent()) {
                ComparedSetUp reference = first.get();
                addShare(
                        reasons,
                        saved.getAsDouble() >= 0 ? Verdict.Key.GAS_SAVED : Verdict.Key.GAS_ADDED,
                        Math.abs(saved.getAsDouble()),
                        reference.volumePerYear());
                addSaved(reasons, Verdict.Key.SURGE_SAVED, reference.perStart().startSurge(), perStart.startSurge());
                addSaved(reasons, Verdict.Key.STORED_SAVED, reference.steady().storedGas(), steady.storedGas());
            }
            double peak = filled.peakNozzleReynolds();
            reasons.add(reason(
                    peak > StartTransient.LAMINAR_NOZZLE ? Verdict.Key.TURBULENT_START : Verdict.Key.LAMINAR_START,
                    Map.of("re", peak, "limit", StartTransient.LAMINAR_NOZZLE)));
            if (!duty.gasShuts()) {
                reasons.add(reason(Verdict.Key.GAS_NEVER_SHUTS, Map.of()));
            }
            if (payback.isPresent()) {
                reasons.add(reason(
                        Verdict.Key.PAYS_BACK,
                        Map.of("starts", payback.getAsDouble(), "shifts", shifts.getAsDouble())));
            }
            return new Verdict(standing(steady, saved), reasons);
        }

        private Verdict.Standing standing(SteadyState steady, OptionalDouble saved) {
            if (first.isEmpty()) {
                return Verdict.Standing.REFERENCE;
            }
            if (!steady.stands()) {
                return Verdict.Standing.DOES_NOT_STAND;
            }
            if (saved.isEmpty()) {
                return Verdict.Standing.REACHES;
            }
            return saved.getAsDouble() > 0 ? Verdict.Standing.SAVES : Verdict.Standing.SAVES_NOTHING;
        }

        private static void addSaved(List<Verdict.Reason> reasons, Verdict.Key key, double of, double is) {
            if (is < of) {
                addShare(reasons, key, of - is, of);
            }
        }

        private static void addShare(List<Verdict.Reason> reasons, Verdict.Key key, double part, double whole) {
            reasons.add(reason(key, Map.of("share", part / whole)));
        }

        private static Verdict.Reason reason(Verdict.Key key, Map<String, Double> numbers) {
            return new Verdict.Reason(key, numbers);
        }
    }
}
