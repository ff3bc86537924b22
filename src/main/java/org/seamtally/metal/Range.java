package org.seamtally.metal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import org.seamtally.catalogue.Composition;
import org.seamtally.catalogue.Element;

/**
 * The range in which a published formula is meant, ends included.
 *
 * @param what name of the quantity
 * @param least in {@code unit}
 * @param greatest in {@code unit}
 * @param unit the unit of the bounds and of what is compared with them
 */
record Range(String what, double least, double greatest, String unit) {

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

    /** Six digits tell a value from the bound it has just passed. */
    private static String plain(double value) {
        return new BigDecimal(value)
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** The range of one element, asked of a whole analysis. */
    record OfElement(Element element, double least, double greatest) {

        Optional<String> outside(Composition composition) {
            return Range.of(element, least, greatest).outside(composition.of(element));
        }
    }
}
