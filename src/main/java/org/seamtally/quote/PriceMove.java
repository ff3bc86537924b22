package org.seamtally.quote;

import org.joda.money.Money;

/**
 * What moved the price from one revision to another, one after the other: first the engine, then the work (frame, settings
 * and quantity), then lines of the shop's own, then prices. Together they are the change to the cent, since each is the
 * difference between two totals that are themselves rounded.
 *
 * @param engine the same request and prices, worked out by the later engine
 * @param work the later frame and settings at the earlier prices
 * @param otherWork the later lines of the shop's own
 * @param prices the later rates, shares and least charge
 */
public record PriceMove(Money engine, Money work, Money otherWork, Money prices) {

    /**
     * From the totals on the way, all in one currency.
     *
     * @param from the earlier revision's total
     * @param recomputed the same by the later engine
     * @param reworked the later work at the earlier prices
     * @param withOtherWork the same with the later lines of the shop's own
     * @param to the later revision's total
     */
    public static PriceMove of(Money from, Money recomputed, Money reworked, Money withOtherWork, Money to) {
        return new PriceMove(
                recomputed.minus(from),
                reworked.minus(recomputed),
                withOtherWork.minus(reworked),
                to.minus(withOtherWork));
    }

    /** All together: the change of the total. */
    public Money total() {
        return engine.plus(work).plus(otherWork).plus(prices);
    }
}
