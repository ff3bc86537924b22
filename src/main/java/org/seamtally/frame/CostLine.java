package org.seamtally.frame;

import java.math.BigDecimal;
import java.util.Optional;
import org.joda.money.Money;
import org.seamtally.quantity.Display;

/**
 * One line of a quote, for the whole order.
 *
 * @param item a stable word, or the shop's own text
 * @param quantity in the rate's unit; empty where the line is a share or a sum
 * @param rate as written: money by a unit, or a share; empty for a sum
 * @param amount rounded to the currency's minor unit
 */
public record CostLine(String item, Optional<Display> quantity, Optional<String> rate, Money amount) {

    static CostLine share(String item, BigDecimal share, Money amount) {
        return new CostLine(item, Optional.empty(), Optional.of(share.toPlainString()), amount);
    }

    static CostLine sum(String item, Money amount) {
        return new CostLine(item, Optional.empty(), Optional.empty(), amount);
    }
}
