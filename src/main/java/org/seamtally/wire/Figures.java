package org.seamtally.wire;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import org.seamtally.quantity.Display;

/** Figures as people read them, in tables and on paper: as many digits as anyone reads. */
public final class Figures {

    /** A blank at which no line is broken: it is printed as an ordinary one. */
    public static final char NO_BREAK = '\u00a0';

    /** What stands where there is no figure. */
    public static final String NONE = "-";

    private Figures() {}

    /** A number with so many decimals, thousands set apart; what rounds to nothing has no sign. */
    public static String number(double value, int decimals) {
        String text = String.format(Locale.ROOT, "%,." + decimals + "f", value).replace(',', ' ');
        return text.matches("-[0.]+") ? text.substring(1) : text;
    }

    /** A number as it was given, at most four decimals. */
    public static String plain(double value) {
        return BigDecimal.valueOf(value)
                .setScale(4, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Money, thousands set apart as in all other numbers. */
    public static String money(String amount) {
        int point = amount.indexOf('.') < 0 ? amount.length() : amount.indexOf('.');
        StringBuilder grouped = new StringBuilder(amount);
        for (int i = point - 3; i > 0 && Character.isDigit(amount.charAt(i - 1)); i -= 3) {
            grouped.insert(i, ' ');
        }
        return grouped.toString();
    }

    /** Four significant digits. */
    public static String four(double value) {
        if (value == 0) {
            return "0";
        }
        int before = (int) Math.floor(Math.log10(Math.abs(value))) + 1;
        return number(value, Math.max(0, Math.min(6, 4 - before)));
    }

    /** Four significant digits of a quantity, without its unit. */
    public static String four(Quantity quantity) {
        return quantity == null ? NONE : four(quantity.value());
    }

    public static String withUnit(Quantity quantity) {
        return quantity == null ? NONE : four(quantity.value()) + " " + quantity.unit();
    }

    /** The same where it was given, not worked out: no digits are added. */
    public static String asGiven(Quantity quantity) {
        return plain(quantity.value()) + " " + quantity.unit();
    }

    /** A unit's symbol as it stands in a text: {@code mm²} for {@code mm2}. */
    public static String sign(String unit) {
        return Display.sign(unit);
    }

    /** Seconds as minutes and seconds. */
    public static String minutes(Quantity seconds) {
        long whole = Math.round(seconds.value());
        return String.format(Locale.ROOT, "%d:%02d", whole / 60, whole % 60);
    }

    /** Seconds as hours, minutes and seconds. */
    public static String time(Quantity seconds) {
        long whole = Math.round(seconds.value());
        return String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole % 3600 / 60, whole % 60);
    }

    public static String percent(double share) {
        return number(100 * share, 1) + NO_BREAK + "%";
    }

    /** Breaks a text into lines of a width, indented. */
    public static String wrapped(String text, int width, String first, String indent) {
        StringBuilder all = new StringBuilder(first);
        int column = first.length();
        boolean atStart = true;
        for (String word : text.replace(" %", NO_BREAK + "%").split(" ")) {
            if (!atStart && column + 1 + word.length() > width) {
                all.append(System.lineSeparator()).append(indent);
                column = indent.length();
                atStart = true;
            }
            all.append(atStart ? "" : " ").append(word);
            column += (atStart ? 0 : 1) + word.length();
            atStart = false;
        }
        return all.toString().replace(NO_BREAK, ' ');
    }
}
