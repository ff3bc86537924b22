package org.seamtally.quote;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.joda.money.Money;

/**
 * A line of the price in two revisions.
 *
 * @param from empty where the line was added
 * @param to empty where it was taken away
 */
public record LineChange(String item, Optional<PricedLine> from, Optional<PricedLine> to) {

    /** @throws IllegalArgumentException where there is neither */
    public LineChange {
        if (from.isEmpty() && to.isEmpty()) {
            throw new IllegalArgumentException("a line stands in one revision at least");
        }
    }

    /** What the line adds to the change of the total; empty where the two are in different currencies. */
    public Optional<Money> change() {
        if (from.isEmpty() || to.isEmpty()) {
            return to.map(PricedLine::amount)
                    .or(() -> from.map(line -> line.amount().negated()));
        }
        Money before = from.get().amount();
        Money after = to.get().amount();
        return before.isSameCurrency(after) ? Optional.of(after.minus(before)) : Optional.empty();
    }

    /** Whether nothing about the line moved. */
    public boolean isNone() {
        return from.equals(to);
    }

    /**
     * Lines put side by side by what they are for; of several for the same thing the first by the first, the second by the
     * second. In the order of the later revision, and where a line was taken away it stands after the one it followed.
     */
    public static List<LineChange> between(List<PricedLine> from, List<PricedLine> to) {
        Map<Key, PricedLine> before = keyed(from);
        Map<Key, PricedLine> after = keyed(to);
        List<Key> order = new ArrayList<>(after.keySet());
        Key previous = null;
        for (Key key : before.keySet()) {
            if (!after.containsKey(key)) {
                order.add(order.indexOf(previous) + 1, key);
            }
            previous = key;
        }
        return order.stream()
                .map(key -> new LineChange(
                        key.item, Optional.ofNullable(before.get(key)), Optional.ofNullable(after.get(key))))
                .toList();
    }

    /** @param occurrence 1 for the first line of this name */
    private record Key(String item, int occurrence) {}

    private static Map<Key, PricedLine> keyed(List<PricedLine> lines) {
        Map<String, Integer> seen = new HashMap<>();
        Map<Key, PricedLine> keyed = new LinkedHashMap<>();
        lines.forEach(line -> keyed.put(new Key(line.item(), seen.merge(line.item(), 1, Integer::sum)), line));
        return keyed;
    }
}
