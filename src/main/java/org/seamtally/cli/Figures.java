package org.seamtally.cli;

import java.util.Locale;
import org.seamtally.wire.Quantity;

/** Figures as a table shows them: as many digits as anyone reads. */
final class Figures {

    /** What stands where there is no figure. */
    static final String NONE = "-";

    private Figures() {}

    /** A number with so many decimals, thousands set apart. */
    static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%,." + decimals + "f", value + 0.0).replace(',', ' ');
    }

    /** Four significant digits. */
    static String four(double value) {
        if (value == 0) {
            return "0";
        }
        int before = (int) Math.floor(Math.log10(Math.abs(value))) + 1;
        return number(value, Math.max(0, Math.min(6, 4 - before)));
    }

    /** Four significant digits of a quantity, without its unit. */
    static String four(Quantity quantity) {
        return quantity == null ? NONE : four(quantity.value());
    }

    static String withUnit(Quantity quantity) {
        return quantity == null ? NONE : four(quantity.value()) + " " + quantity.unit();
    }

    /** Seconds as minutes and seconds. */
    static String minutes(Quantity seconds) {
        long whole = Math.round(seconds.value());
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    /** Seconds as hours and minutes, or minutes and seconds where short. */
    static String time(Quantity seconds) {
        long whole = Math.round(seconds.value());
        return whole < 3600
                ? minutes(seconds) + " min"
                : String.format(Locale.ROOT, "%d:%02d h", whole / 3600, whole % 3600 / 60);
    }

    static String percent(double share) {
        return number(100 * share, 1) + " %";
    }

    /** Breaks a text into lines of a width, indented. */
    static String wrapped(String text, int width, String first, String indent) {
        StringBuilder all = new StringBuilder(first);
        int column = first.length();
        boolean atStart = true;
        for (String word : text.split(" ")) {
            if (!atStart && column + 1 + word.length() > width) {
                all.append(System.lineSeparator()).append(indent);
                column = indent.length();
                atStart = true;
            }
            all.append(atStart ? "" : " ").append(word);
            column += (atStart ? 0 : 1) + word.length();
            atStart = false;
        }
        return all.toString();
    }
}
