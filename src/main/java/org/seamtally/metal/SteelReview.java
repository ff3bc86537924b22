package org.seamtally.metal;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One tube, one way of welding it and up to ten fillers, best first: not cautioned for cracking, then the least advised
 * preheat, then the strength nearest the tube's from below, then the classification; the order is a decision of this
 * project.
 *
 * @param base what holds whatever the filler is
 * @param fillers in the order of their rank
 */
public record SteelReview(BaseReview base, List<ReviewedFiller> fillers) {

    /** The most fillers that are compared: more than ten is a search, not a comparison. A decision of this project. */
    public static final int MOST_FILLERS = 10;

    /** Copies the list. */
    public SteelReview {
        fillers = List.copyOf(fillers);
    }

    /**
     * Reviews and ranks.
     *
     * @param base the tube
     * @param rods 1 to 10 fillers
     * @param conditions how the joint is welded
     * @throws IllegalArgumentException where there are none or too many fillers, or the base's alloy is too high for the
     *     hardness formulas
     */
    public static SteelReview of(BaseMetal base, List<Rod> rods, WeldingConditions conditions) {
        if (rods.isEmpty() || rods.size() > MOST_FILLERS) {
            throw new IllegalArgumentException(rods.size() + " fillers: 1 to " + MOST_FILLERS + " are compared");
        }
        Analysed tube = Analysed.of(base.composition());
        BaseReview ofBase = BaseReview.of(base, tube, conditions);
        List<ReviewedFiller> sorted = rods.stream()
                .map(rod -> ReviewedFiller.of(WeldedPair.of(base, tube, rod, conditions.dilution()), conditions))
                .sorted(Comparator.comparing(filler -> filler.key(base), RankKey.ORDER))
                .toList();
        List<ReviewedFiller> placed = new ArrayList<>();
        for (int i = 0; i < sorted.size(); i++) {
            placed.add(sorted.get(i).placed(i + 1, neighbour(sorted, i), base));
        }
        return new SteelReview(ofBase, placed);
    }

    /**
     * Reviews one filler by itself.
     *
     * @param pair the tube and the filler, at the conditions' dilution
     * @param conditions how the joint is welded
     * @throws IllegalArgumentException where the base's alloy is too high for the hardness formulas
     */
    public static SteelReview of(WeldedPair pair, WeldingConditions conditions) {
        return new SteelReview(
                BaseReview.of(pair.base(), pair.tube(), conditions), List.of(ReviewedFiller.of(pair, conditions)));
    }

    /** The next one, or the one before for the last; empty for a filler alone. */
    private static Optional<ReviewedFiller> neighbour(List<ReviewedFiller> sorted, int place) {
        if (sorted.size() == 1) {
            return Optional.empty();
        }
        return Optional.of(sorted.get(place + 1 < sorted.size() ? place + 1 : place - 1));
    }
}
