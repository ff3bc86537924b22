package org.seamtally.catalogue;

import java.util.Map;
import java.util.OptionalDouble;

/** What holds of every specified metal, steel or filler. */
final class Specification {

    private Specification() {}

    static void check(
            String name,
            Map<Element, Limits> limits,
            Composition typical,
            OptionalDouble yieldStrength,
            OptionalDouble tensileStrength) {
        for (Map.Entry<Element, Limits> limit : limits.entrySet()) {
            double share = typical.of(limit.getKey());
            // an element of which only a maximum is named may be missing from a typical analysis: it counts as 0
            if (!limit.getValue().admit(share)) {
                throw new IllegalArgumentException(name + ": " + limit.getKey().symbol() + " " + share
                        + " % of the typical analysis is outside the limits");
            }
        }
        inOrder(name, yieldStrength, tensileStrength);
    }

    static void inOrder(String name, OptionalDouble lower, OptionalDouble higher) {
        if (!(lower.orElse(1) > 0) || !(higher.orElse(1) > 0)) {
            throw new IllegalArgumentException(name + ": a strength is not positive");
        }
        if (lower.isPresent() && higher.isPresent() && lower.getAsDouble() > higher.getAsDouble()) {
            throw new IllegalArgumentException(name + ": the strengths are not in order");
        }
    }
}
