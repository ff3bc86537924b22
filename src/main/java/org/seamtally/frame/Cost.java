package org.seamtally.frame;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.joda.money.Money;
import org.seamtally.catalogue.Fuel;
import org.seamtally.catalogue.Fuels;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Rate;

/**
 * The price of an order. Each line is rounded once, half-even, to the currency's minor unit; the total is the sum of the
 * lines, so that they add up to the last cent.
 *
 * @param heading "welding only" where no other work is priced
 * @param lines for the whole order
 * @param total sum of the lines
 * @param perFrame total over quantity, rounded, for information
 */
public record Cost(String heading, List<CostLine> lines, Money total, Money perFrame) {

    /** The heading where no other work is priced. */
    public static final String WELDING_ONLY = "welding only";
    /** The heading where other work is. */
    public static final String WITH_OTHER_WORK = "welding and other work";

    private static final RoundingMode ROUNDING = RoundingMode.HALF_EVEN;

    static Cost of(Totals order, int quantity, Prices prices, List<Caution> cautions) {
        CurrencyUnit currency = prices.currency();
        Lines lines = new Lines(currency);
        List<String> unpriced = new ArrayList<>();
        lines.priced("labour", order.labour().total(), prices.labour(), unpriced);
        lines.priced("filler", order.filler().consumed(), prices.filler(), unpriced);
        lines.priced("gas", order.gas().total(), prices.gas(), unpriced);
        lines.priced("electricity", order.electricity() + order.preheatElectricity(), prices.electricity(), unpriced);
        if (!order.preheatFuel().isEmpty()) {
            if (prices.fuel().isPresent()) {
                lines.priced("fuel", fuel(order.preheatFuel(), prices.fuel().get()), prices.fuel(), unpriced);
            } else {
                unpriced.add("fuel");
            }
        }
        for (OtherWork work : prices.otherWork()) {
            lines.other(work);
        }
        prices.rework().ifPresent(share -> lines.share("rework", share, share));
        prices.overhead().ifPresent(share -> lines.share("overhead", share, share));
        // a margin is a share of the price: (cost + overhead)·m/(1 − m)
        prices.margin()
                .ifPresent(m -> lines.share("margin", m, m.divide(BigDecimal.ONE.subtract(m), MathContext.DECIMAL128)));
        prices.markup().ifPresent(share -> lines.share("markup", share, share));
        prices.minimumCharge().ifPresent(lines::atLeast);
        if (!unpriced.isEmpty()) {
            cautions.add(new Caution(
                    "not-priced",
                    "Used but not priced, since prices leave it out: " + String.join(", ", unpriced) + ".",
                    Optional.empty()));
        }
        return new Cost(
                prices.otherWork().isEmpty() ? WELDING_ONLY : WITH_OTHER_WORK,
                List.copyOf(lines.lines),
                lines.total,
                lines.total.dividedBy(quantity, ROUNDING));
    }

    /**
     * What a preheat takes at these prices: its labour, fuel and electricity, overhead and margin left out, rounded once;
     * empty where none of it is priced.
     */
    static Optional<Money> ofPreheat(Totals preheat, Prices prices) {
        List<BigDecimal> amounts = new ArrayList<>();
        prices.labour().ifPresent(rate -> amounts.add(rate.of(preheat.labour().total())));
        if (preheat.preheatFuel().isEmpty()) {
            prices.electricity().ifPresent(rate -> amounts.add(rate.of(preheat.preheatElectricity())));
        } else {
            prices.fuel().ifPresent(rate -> amounts.add(rate.of(fuel(preheat.preheatFuel(), rate))));
        }
        return amounts.isEmpty()
                ? Optional.empty()
                : Optional.of(Money.of(
                        prices.currency(), amounts.stream().reduce(BigDecimal.ZERO, BigDecimal::add), ROUNDING));
    }

    /** The fuels' quantity in the kind that the rate prices: mass, or volume as a gas. */
    private static double fuel(Map<String, Double> masses, Rate rate) {
        double sum = 0;
        for (Map.Entry<String, Double> entry : masses.entrySet()) {
            Fuel fuel = Fuels.find(entry.getKey()).orElseThrow();
            sum += rate.dimension() == Dimension.MASS
                    ? entry.getValue()
                    : entry.getValue() / fuel.gasDensity().orElseThrow();
        }
        return sum;
    }

    /** The lines so far and their sum. */
    private static final class Lines {

        private final CurrencyUnit currency;
        private final List<CostLine> lines = new ArrayList<>();
        private Money total;

        Lines(CurrencyUnit currency) {
            this.currency = currency;
            this.total = Money.zero(currency);
        }

        void priced(String item, double quantity, Optional<Rate> rate, List<String> unpriced) {
            if (rate.isEmpty()) {
                if (quantity > 0) {
                    unpriced.add(item);
                }
                return;
            }
            add(priced(item, quantity, rate.get()));
        }

        private CostLine priced(String item, double quantity, Rate rate) {
            return new CostLine(
                    item, Optional.of(rate.show(quantity)), Optional.of(rate.text()), rounded(rate.of(quantity)));
        }

        void other(OtherWork work) {
            add(work.priced()
                    .map(priced -> priced(work.item(), priced.quantity(), priced.rate()))
                    .orElseGet(() ->
                            CostLine.sum(work.item(), rounded(work.amount().orElseThrow()))));
        }

        /** A share of all that stands above. */
        void share(String item, BigDecimal shown, BigDecimal factor) {
            add(CostLine.share(item, shown, rounded(total.getAmount().multiply(factor))));
        }

        void atLeast(BigDecimal charge) {
            Money lacking = rounded(charge).minus(total);
            if (lacking.isPositive()) {
                add(CostLine.sum("minimum charge", lacking));
            }
        }

        private void add(CostLine line) {
            lines.add(line);
            total = total.plus(line.amount());
        }

        private Money rounded(BigDecimal amount) {
            return Money.of(currency, amount, ROUNDING);
        }
    }
}
