package org.seamtally.load;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** The middle one of several figures; the greater of the middle two where there are two. */
final class Median {

    private Median() {}

    static double of(double... figures) {
        double[] sorted = figures.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    static <T> double of(List<T> all, ToDoubleFunction<T> figure) {
        return of(all.stream().mapToDouble(figure).toArray());
    }
}
