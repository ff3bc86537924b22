package org.seamtally.wire;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.QuantityException;
import org.seamtally.quantity.Rate;

/** Leaves that fit their constraints, read. A leaf that was left out reads as null. */
final class Read {

    private Read() {}

    static Double quantity(Leaf leaf, Dimension dimension) {
        return leaf == null ? null : Double.valueOf(dimension.read(leaf.text()));
    }

    static Double length(Leaf leaf) {
        return quantity(leaf, Dimension.LENGTH);
    }

    /** The same for cross-checks, where the leaf may not fit yet: then it reads as null too. */
    static Double tryQuantity(Leaf leaf, Dimension dimension) {
        try {
            return leaf == null || leaf.kind() != Leaf.Kind.TEXT ? null : Double.valueOf(dimension.read(leaf.text()));
        } catch (QuantityException e) {
            return null;
        }
    }

    static Double number(Leaf leaf) {
        return leaf == null ? null : Double.valueOf(leaf.text());
    }

    static BigDecimal decimal(Leaf leaf) {
        return leaf == null ? null : new BigDecimal(leaf.text());
    }

    static Integer whole(Leaf leaf) {
        return leaf == null ? null : Integer.valueOf(leaf.text());
    }

    static Boolean truth(Leaf leaf) {
        return leaf == null ? null : Boolean.valueOf(leaf.text());
    }

    static String text(Leaf leaf) {
        return leaf == null ? null : leaf.text();
    }

    /** The first of the dimensions that the price is in. */
    static Rate rate(Leaf leaf, Dimension... dimensions) {
        if (leaf == null) {
            return null;
        }
        QuantityException last = null;
        for (Dimension dimension : dimensions) {
            try {
                return Rate.read(leaf.text(), dimension);
            } catch (QuantityException e) {
                last = e;
            }
        }
        throw last;
    }

    static <T> Optional<T> maybe(T value) {
        return Optional.ofNullable(value);
    }

    static <T> List<T> list(List<T> given) {
        return given == null ? List.of() : given;
    }
}
