package org.seamtally.page;

import java.util.List;
import java.util.function.ToIntFunction;

/**
 * A list that stands in two columns: an order of reading down the first, then down the second.
 *
 * @param first about half of it by its length in letters, or all of a short one
 * @param second the rest
 */
record Halves<T>(List<T> first, List<T> second) {

    static <T> Halves<T> of(List<T> all, ToIntFunction<T> letters) {
        int total = all.stream().mapToInt(letters).sum();
        int so = 0;
        int cut = 0;
        while (cut < all.size() && 2 * so < total) {
            so += letters.applyAsInt(all.get(cut));
            cut++;
        }
        return new Halves<>(all.subList(0, cut), all.subList(cut, all.size()));
    }
}
