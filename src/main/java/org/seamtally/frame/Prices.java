package org.seamtally.frame;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.seamtally.quantity.Rate;

/**
 * The shop's prices. What is left out is not priced, and the quote says so.
 *
 * @param currency ISO 4217
 * @param labour wage plus on-costs by time
 * @param filler by mass consumed
 * @param gas by volume
 * @param electricity by energy
 * @param fuel by mass or by volume
 * @param overhead share of cost, 0 or more
 * @param margin share of price, 0 to below 0.9; not with a markup
 * @param markup share of cost and overhead, 0 or more; not with a margin
 * @param rework share of cost, 0 or more
 * @param minimumCharge for the order
 * @param otherWork lines of the shop's own
 */
public record Prices(
        CurrencyUnit currency,
        Optional<Rate> labour,
        Optional<Rate> filler,
        Optional<Rate> gas,
        Optional<Rate> electricity,
        Optional<Rate> fuel,
        Optional<BigDecimal> overhead,
        Optional<BigDecimal> margin,
        Optional<BigDecimal> markup,
        Optional<BigDecimal> rework,
        Optional<BigDecimal> minimumCharge,
        List<OtherWork> otherWork) {

    /** A margin from here on up is no margin but a slip: at 1 the price would be infinite. */
    public static final BigDecimal MARGIN_BELOW = new BigDecimal("0.9");

    /** @throws IllegalArgumentException where a margin and a markup are both given, or the margin is out of range */
    public Prices {
        otherWork = List.copyOf(otherWork);
        if (margin.isPresent() && markup.isPresent()) {
            throw new IllegalArgumentException("a margin or a markup, not both");
        }
        if (margin.isPresent() && (margin.get().signum() < 0 || margin.get().compareTo(MARGIN_BELOW) >= 0)) {
            throw new IllegalArgumentException("a margin of " + margin.get() + " is not in [0, 0.9)");
        }
    }

    /** The same prices with these lines of the shop's own instead. */
    public Prices withOtherWork(List<OtherWork> other) {
        return new Prices(
                currency,
                labour,
                filler,
                gas,
                electricity,
                fuel,
                overhead,
                margin,
                markup,
                rework,
                minimumCharge,
                other);
    }
}
