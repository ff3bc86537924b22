package org.seamtally.frame;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.joda.money.Money;
import org.seamtally.quantity.Decimals;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/** What the preheat that is advised, and not asked for, would add to an order. */
final class AdvisedForOrder {

    /** More marks than this in one sentence and nobody reads the sentence. */
    private static final int MOST_MARKS = 8;

    private AdvisedForOrder() {}

    /** What it would take on all joints of all frames. */
    static Totals totals(List<JointEstimate> joints, int quantity) {
        Totals sum = Totals.NONE;
        for (JointEstimate joint : joints) {
            if (joint.advisedPreheat().isPresent()) {
                AdvisedPreheat advised = joint.advisedPreheat().get();
                sum = sum.plus(Totals.ofPreheat(advised.use(), advised.source()).times(joint.count()));
            }
        }
        return sum.times(quantity);
    }

    /**
     * Says so, once for the order.
     *
     * @param advised what it would take
     * @param order what the order takes without it
     */
    static Optional<Caution> caution(
            List<JointEstimate> joints, Totals advised, Totals order, int quantity, Optional<Prices> prices) {
        List<String> marks = joints.stream()
                .filter(joint -> joint.advisedPreheat().isPresent())
                .map(JointEstimate::mark)
                .toList();
        if (marks.isEmpty()) {
            return Optional.empty();
        }
        String which = marks.size() <= MOST_MARKS
                ? String.join(", ", marks)
                : marks.get(0) + " and " + (marks.size() - 1) + " more";
        String time = advised.labour().preheat() > 0
                ? "and " + Decimals.of(Math.ceil(advised.labour().preheat() / 60), 0) + " min of work"
                : "(the time to heat up is left out, since the source's power is not known)";
        Phrase text = Phrase.of(
                "Preheat is advised on {} and none is counted: for the order it would add about {} supplied {}{}.",
                Phrase.of(which),
                Phrase.measured(Dimension.ENERGY, advised.preheatEnergy()),
                Phrase.of(time),
                Phrase.of(prices.map(given -> ", and " + amount(advised, order, quantity, given) + " to the price"
                                + (advised.labour().preheat() > 0
                                        ? ""
                                        : " for what is burned alone: give"
                                                + " preheat.sourcePower and preheat.hold to count the time"))
                        .orElse("")));
        return Optional.of(new Caution("preheat-advised", text, Optional.empty()));
    }

    /** The price with it less the price without it: overhead, margin and a minimum charge are in both. */
    private static String amount(Totals advised, Totals order, int quantity, Prices prices) {
        Money without = Cost.of(order, quantity, prices, new ArrayList<>()).total();
        Money with = Cost.of(order.plus(advised), quantity, prices, new ArrayList<>())
                .total();
        return "about " + with.minus(without);
    }
}
