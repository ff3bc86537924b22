package org.seamtally.catalogue;

import java.util.EnumMap;
import java.util.Map;

/**
 * A steel's analysis: mass per cent by element; an element that is not named counts as 0.
 *
 * @param massPercent mass per cent by element, each 0 to 100, together at most 100
 */
public record Composition(Map<Element, Double> massPercent) {

    /** @throws IllegalArgumentException where a share is negative, not finite, or all of them exceed 100 % */
    public Composition {
        EnumMap<Element, Double> copy = new EnumMap<>(Element.class);
        double sum = 0;
        for (Map.Entry<Element, Double> share : massPercent.entrySet()) {
            double percent = share.getValue();
            if (!(percent >= 0 && percent <= 100)) {
                throw new IllegalArgumentException(
                        share.getKey().symbol() + " " + percent + " % is no share of a steel");
            }
            sum += percent;
            copy.put(share.getKey(), percent);
        }
        if (sum > 100) {
            throw new IllegalArgumentException("the elements add up to " + sum + " %, over 100 %");
        }
        massPercent = java.util.Collections.unmodifiableMap(copy);
    }

    /** Mass per cent of an element, 0 where the analysis does not name it. */
    public double of(Element element) {
        Double percent = massPercent.get(element);
        return percent == null ? 0 : percent;
    }
}
