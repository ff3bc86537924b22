package org.seamtally.quote;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A shop's prices over time.
 *
 * @param versions at least one, in the order of their numbers
 */
public record PriceBook(PriceBookName name, List<PriceBookVersion> versions) {

    /** @throws IllegalArgumentException where there is no version, or they are out of order */
    public PriceBook {
        versions = List.copyOf(versions);
        if (versions.isEmpty()) {
            throw new IllegalArgumentException("a price book has at least one version");
        }
        for (int i = 1; i < versions.size(); i++) {
            if (versions.get(i).number() <= versions.get(i - 1).number()) {
                throw new IllegalArgumentException("versions stand in the order of their numbers");
            }
        }
    }

    /** The version made last, whether it is effective yet or not. */
    public PriceBookVersion latest() {
        return versions.get(versions.size() - 1);
    }

    /** The version that a quote of a day takes: of those effective by then the one made last; empty where none is yet. */
    public Optional<PriceBookVersion> effectiveOn(LocalDate day) {
        return versions.stream()
                .filter(version -> !version.effective().isAfter(day))
                .max(Comparator.comparingInt(PriceBookVersion::number));
    }

    /** A version by its number. */
    public Optional<PriceBookVersion> version(int number) {
        return versions.stream().filter(version -> version.number() == number).findFirst();
    }
}
