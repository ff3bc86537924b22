package org.seamtally.metal;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seamtally.metal.Reason.Step;

/**
 * What a filler is ranked by.
 *
 * @param cracking whether it is cautioned for cracking
 * @param preheat advised, K, 0 where none is
 * @param strengthClass 0 at most the base's, 1 above it, 2 not known; 0 for all where the base's is not known
 * @param strengthGap Pa, distance from the base's strength
 * @param name its classification
 */
record RankKey(boolean cracking, double preheat, int strengthClass, double strengthGap, String name) {

    private static final Comparator<RankKey> BY_CRACKING = Comparator.comparing(RankKey::cracking);
    private static final Comparator<RankKey> BY_PREHEAT = Comparator.comparingDouble(RankKey::preheat);
    private static final Comparator<RankKey> BY_STRENGTH =
            Comparator.comparingInt(RankKey::strengthClass).thenComparingDouble(RankKey::strengthGap);

    static final Comparator<RankKey> ORDER =
            BY_CRACKING.thenComparing(BY_PREHEAT).thenComparing(BY_STRENGTH).thenComparing(RankKey::name);

    static RankKey of(BaseMetal base, Rod rod, boolean cracking, OptionalDouble preheat) {
        OptionalDouble wanted = base.tensileStrength();
        if (wanted.isEmpty()) {
            return new RankKey(cracking, preheat.orElse(0), 0, 0, rod.name());
        }
        if (rod.tensileStrength().isEmpty()) {
            return new RankKey(cracking, preheat.orElse(0), 2, 0, rod.name());
        }
        double above = rod.tensileStrength().getAsDouble() - wanted.getAsDouble();
        return new RankKey(cracking, preheat.orElse(0), above > 0 ? 1 : 0, Math.abs(above), rod.name());
    }

    /** The step that parts two fillers; empty where even their names are the same. */
    Optional<Step> partedFrom(RankKey other) {
        if (BY_CRACKING.compare(this, other) != 0) {
            return Optional.of(Step.CRACKING);
        }
        if (BY_PREHEAT.compare(this, other) != 0) {
            return Optional.of(Step.PREHEAT);
        }
        if (BY_STRENGTH.compare(this, other) != 0) {
            return Optional.of(Step.STRENGTH);
        }
        return name.equals(other.name) ? Optional.empty() : Optional.of(Step.NAME);
    }
}
