package org.seamtally.quote;

import java.util.Optional;
import org.joda.money.Money;

/**
 * A line of a quote's price.
 *
 * @param item what it is for
 * @param quantity what is priced; empty where the line is a share or a sum
 * @param rate money by a unit, or a share, as written; empty for a sum
 */
public record PricedLine(String item, Optional<Measured> quantity, Optional<String> rate, Money amount) {

    /** A number with its unit. */
    public record Measured(double value, String unit) {}
}
