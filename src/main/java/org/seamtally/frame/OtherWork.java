package org.seamtally.frame;

import java.math.BigDecimal;
import java.util.Optional;
import org.seamtally.quantity.Rate;

/**
 * A line of the shop's own, for the whole order: cutting, coping, bending, a jig, inspection, the tube itself.
 *
 * @param item what the customer reads
 * @param priced quantity and rate, or
 * @param amount a fixed sum; exactly one of the two is present
 */
public record OtherWork(String item, Optional<Priced> priced, Optional<BigDecimal> amount) {

    /** @throws IllegalArgumentException where not exactly one of the two is present */
    public OtherWork {
        if (priced.isPresent() == amount.isPresent()) {
            throw new IllegalArgumentException(item + ": either a quantity and a rate, or an amount");
        }
    }

    /**
     * A quantity at a rate.
     *
     * @param quantity in SI
     * @param rate for the same kind of quantity
     */
    public record Priced(double quantity, Rate rate) {}
}
