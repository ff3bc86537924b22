package org.seamtally.metal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.Phrase;

/**
 * The range in which a published formula is meant, ends included.
 *
 * @param what name of the quantity
 * @param least in {@code unit}
 * @param greatest in {@code unit}
 * @param unit the unit of the bounds and of what is compared with them
 */
record Range(String what, double least, double greatest, String unit) {

    private static final int DIGITS = 6;

    static Range of(Element element, double least, double greatest) {
        return new Range(element.symbol(), least, greatest, "%");
    }

    boolean holds(double value) {
        return value >= least && value <= greatest;
    }

    /** Says where a value lies outside; empty where it lies within. */
    Optional<String> outside(double value) {
        if (holds(value)) {
            return Optional.empty();
        }
        return Optional.of(what + " " + plain(value) + " " + unit + " is outside " + plain(least) + " to "
                + plain(greatest) + " " + unit);
    }

    /**
     * The same, to be told in the reader's units.
     *
     * @param si what one of {@code unit} is in SI
     */
    Optional<Phrase> outside(double value, Dimension dimension, double si) {
        return holds(value)
                ? Optional.empty()
                : Optional.of(Phrase.of(
                        what + " {} is outside {} to {}",
                        Phrase.measured(dimension, value * si, DIGITS),
                        Phrase.measured(dimension, least * si),
                        Phrase.measured(dimension, greatest * si)));
    }

    /** Six digits tell a value from the bound it has just passed. */
    private static String plain(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(DIGITS))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** The range of one element, asked of a whole analysis. */
    record OfElement(Element element, double least, double greatest) {

        Optional<String> outside(Composition composition) {
            double share = composition.of(element);
            return share >= least && share <= greatest
                    ? Optional.empty()
                    : Range.of(element, least, greatest).outside(share);
        }

        /** What lies outside any of several ranges, in their order. */
        static List<String> outside(List<OfElement> ranges, Composition composition) {
            List<String> outside = new ArrayList<>(0);
            for (OfElement range : ranges) {
                range.outside(composition).ifPresent(outside::add);
            }
            return outside;
        }
    }
}
