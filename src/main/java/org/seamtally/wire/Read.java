package org.seamtally.wire;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import org.seamtally.frame.Settings;
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

    /**
     * A share that is finer than this was never meant. Below 1 such a share is below 1 as a double too, and exact
     * arithmetic on "1e-2000000000" would fill the memory.
     */
    static final int MOST_DECIMALS = 12;

    // no number of so few decimals that lies in any range here is longer, however it is written
    private static final int LONGEST_NUMBER = 40;

    /** A number to be checked; null where it is none, or absurdly long or fine. */
    static BigDecimal tryDecimal(Leaf leaf) {
        if (leaf == null || leaf.kind() != Leaf.Kind.NUMBER || leaf.text().length() > LONGEST_NUMBER) {
            return null;
        }
        try {
            BigDecimal value = new BigDecimal(leaf.text());
            // a large exponent is out of every range too
            boolean plain = Math.abs((long) value.scale()) <= LONGEST_NUMBER;
            return plain && value.stripTrailingZeros().scale() <= MOST_DECIMALS ? value : null;
        } catch (NumberFormatException e) {
            // an exponent past what even a decimal holds
            return null;
        }
    }

    /** The list's own spelling of a word. */
    static String word(Leaf leaf, Words words) {
        return leaf == null ? null : words.find(leaf.text());
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

    /** A day; null where it was left out or is none. Years of four digits: RFC 3339 has no others. */
    static LocalDate tryDate(Leaf leaf) {
        if (leaf == null || leaf.kind() != Leaf.Kind.TEXT || !leaf.text().matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
            return null;
        }
        try {
            return LocalDate.parse(leaf.text());
        } catch (DateTimeParseException e) {
            // such as the 30th of February
            return null;
        }
    }

    /** How a shop works, of a whole request or of one joint. */
    static Settings settings(
            SteelRequest steel, FillerRequest filler, ArcRequest arc, GasRequest gas, PreheatRequest preheat) {
        return new Settings(
                SteelRequest.given(steel),
                FillerRequest.given(filler),
                ArcRequest.given(arc),
                GasRequest.given(gas),
                PreheatRequest.given(preheat));
    }

    static <T> Optional<T> maybe(T value) {
        return Optional.ofNullable(value);
    }

    static <T> List<T> list(List<T> given) {
        return given == null ? List.of() : given;
    }
}
