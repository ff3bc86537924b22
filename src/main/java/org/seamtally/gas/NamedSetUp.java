package org.seamtally.gas;

import java.math.BigDecimal;
import java.util.Optional;

/**
 * A set-up to compare.
 *
 * @param name as the reader knows it, not blank
 * @param setUp what it is
 * @param price what it costs to get, in the comparison's currency, where it is known
 */
public record NamedSetUp(String name, SetUp setUp, Optional<BigDecimal> price) {

    /** @throws IllegalArgumentException where the name is blank or the price negative */
    public NamedSetUp {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a set-up needs a name");
        }
        java.util.Objects.requireNonNull(setUp, "the set-up");
        if (price.isPresent() && price.get().signum() < 0) {
            throw new IllegalArgumentException(name + " cannot cost " + price.get());
        }
    }
}
