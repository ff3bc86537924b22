package org.seamtally.wire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What was assumed for one field, for people to read: the joints' own stand together.
 *
 * @param field its path, without the joint
 * @param values what was taken, with the marks of the joints where it was not all of them
 * @param because on whose word
 */
public record GatheredAssumption(String field, String values, String because) {

    private record Key(String field, String because) {}

    /** All assumptions of an estimate, one for each field and reason, in the order they were made. */
    public static List<GatheredAssumption> of(FrameEstimateAnswer answer) {
        Map<Key, List<AssumptionAnswer>> byField = new LinkedHashMap<>();
        for (AssumptionAnswer assumption : answer.assumptions()) {
            String field = assumption.path().replaceAll("^frame\\.joints\\[[0-9*]+]\\.", "");
            byField.computeIfAbsent(new Key(field, assumption.because()), key -> new ArrayList<>())
                    .add(assumption);
        }
        List<GatheredAssumption> gathered = new ArrayList<>();
        byField.forEach((key, assumptions) -> gathered.add(new GatheredAssumption(
                key.field, values(assumptions, answer.joints().size()), key.because)));
        return gathered;
    }

    private static String values(List<AssumptionAnswer> assumptions, int joints) {
        if (assumptions.size() == 1) {
            return assumptions.get(0).value() + marks(assumptions.get(0), joints);
        }
        List<String> values =
                assumptions.stream().map(AssumptionAnswer::value).distinct().toList();
        return values.size() <= Marks.MOST
                ? String.join(", ", values)
                : values.size() + " values, " + values.get(0) + " and others";
    }

    private static String marks(AssumptionAnswer assumption, int joints) {
        int used = assumption.joints().size();
        if (used == 0 || used == joints) {
            return "";
        }
        return " for " + (used <= Marks.MOST ? String.join(", ", assumption.joints()) : used + " of the joints");
    }
}
