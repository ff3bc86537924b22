package org.seamtally.frame;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/** The defaults used so far: each once, with the joints that it was used for. */
final class Assumptions {

    private record Key(String field, Assumption.Value value, Phrase because) {}

    private final Map<Key, LinkedHashSet<Place>> found = new LinkedHashMap<>();
    private final Map<Double, Assumption.Value> numbers = new HashMap<>();
    private final Map<String, Phrase> reasons = new HashMap<>();

    /**
     * Where a joint stands in what was sent.
     *
     * @param path of the joint, such as {@code frame.joints[2]}
     * @param everyPath the same for any joint, such as {@code frame.joints[*]}
     * @param mark its mark
     */
    record Place(String path, String everyPath, String mark) {

        /** Whether it is the only joint there is, so that nobody needs its mark. */
        boolean alone() {
            return path.equals(everyPath);
        }
    }

    /** Notes a default of the whole request, for a reason without quantities. */
    void note(String path, Assumption.Value value, String because) {
        note(path, value, reason(because));
    }

    /** Notes a default of the whole request. */
    void note(String path, Assumption.Value value, Phrase because) {
        found.computeIfAbsent(new Key(path, value, because), key -> new LinkedHashSet<>());
    }

    /** Notes a default of one joint, for a reason without quantities. */
    void note(Place joint, String field, Assumption.Value value, String because) {
        note(joint, field, value, reason(because));
    }

    /** Notes a default of one joint. */
    void note(Place joint, String field, Assumption.Value value, Phrase because) {
        found.computeIfAbsent(new Key(field, value, because), key -> new LinkedHashSet<>())
                .add(joint);
    }

    /** A reason without quantities: the same few are given at each joint. */
    Phrase reason(String words) {
        return reasons.computeIfAbsent(words, Phrase::of);
    }

    /** A number, as it would be sent: the same few are noted at each joint, and written out once. */
    Assumption.Value number(double value) {
        return numbers.computeIfAbsent(
                value,
                number -> new Assumption.Words(
                        BigDecimal.valueOf(number).stripTrailingZeros().toPlainString()));
    }

    static Assumption.Value words(String text) {
        return new Assumption.Words(text);
    }

    static Assumption.Value measured(Dimension dimension, double value) {
        return new Assumption.Measured(dimension, value);
    }

    List<Assumption> list() {
        List<Assumption> list = new ArrayList<>(found.size());
        found.forEach((key, places) -> list.add(new Assumption(
                path(key.field, places),
                key.value,
                key.because,
                places.stream().filter(place -> !place.alone()).map(Place::mark).toList())));
        return list;
    }

    private static String path(String field, LinkedHashSet<Place> places) {
        if (places.isEmpty()) {
            return field;
        }
        Place place = places.iterator().next();
        return (places.size() == 1 ? place.path : place.everyPath) + "." + field;
    }
}
