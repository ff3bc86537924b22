package org.seamtally.wire;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.seamtally.quantity.Display;

/** Figures as people read them, in tables and on paper: as many digits as anyone reads. */
public final class Figures {

    /** A blank at which no line is broken: it is printed as an ordinary one. */
    public static final char NO_BREAK = '\u00a0';

    /** What stands where there is no figure. */
    public static final String NONE = "-";

    // a tenth of a per cent
    private static final int DECIMALS_OF_SHARE = 3;

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
        return value == 0 ? "0" : number(value, decimalsOfFour(value));
    }

    /** How many decimals a number has that is told in four significant digits: six at most. */
    private static int decimalsOfFour(double value) {
        int before = value == 0 ? 1 : (int) Math.floor(Math.log10(Math.abs(value))) + 1;
        return Math.max(0, Math.min(6, 4 - before));
    }

    /**
     * The parts of a total, rounded so that they add up to it as it is printed: each is rounded down, and what is then
     * lacking goes, a unit of the last decimal each, to those that lost most by it.
     *
     * @param total what the parts come to
     * @param decimals to which total and parts are printed
     * @param parts none below 0
     * @return the parts in the order given
     */
    public static double[] addingUp(double total, int decimals, double... parts) {
        long[] units = new long[parts.length];
        BigDecimal[] lost = new BigDecimal[parts.length];
        long lacking = unit(total, decimals).setScale(0, RoundingMode.HALF_UP).longValueExact();
        for (int i = 0; i < parts.length; i++) {
            BigDecimal exact = unit(parts[i], decimals);
            units[i] = exact.setScale(0, RoundingMode.FLOOR).longValueExact();
            lost[i] = exact.subtract(BigDecimal.valueOf(units[i]));
            lacking -= units[i];
        }
        IntStream.range(0, parts.length)
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> lost[i]).reversed())
                .limit(Math.max(0, lacking))
                .forEach(i -> units[i]++);
        return LongStream.of(units)
                .mapToDouble(unit -> BigDecimal.valueOf(unit, decimals).doubleValue())
                .toArray();
    }

    /** Parts of a quantity to the decimals of its four significant digits, without their unit; they add up to it. */
    public static List<String> partsOf(Quantity total, List<Quantity> parts) {
        int decimals = decimalsOfFour(total.value());
        return Arrays.stream(addingUp(total.value(), decimals, values(parts)))
                .mapToObj(part -> number(part, decimals))
                .toList();
    }

    /** What share of a quantity each of its parts is: per cent that add up to 100, or nothing of nothing. */
    public static List<String> shares(Quantity total, List<Quantity> parts) {
        double[] shares = Arrays.stream(values(parts))
                .map(part -> total.value() == 0 ? 0 : part / total.value())
                .toArray();
        return Arrays.stream(addingUp(total.value() == 0 ? 0 : 1, DECIMALS_OF_SHARE, shares))
                .mapToObj(Figures::percent)
                .toList();
    }

    private static double[] values(List<Quantity> quantities) {
        return quantities.stream().mapToDouble(Quantity::value).toArray();
    }

    /** A number in units of its last decimal. */
    private static BigDecimal unit(double value, int decimals) {
        return BigDecimal.valueOf(value).movePointRight(decimals);
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
        return time(seconds.value());
    }

    /** @param seconds rounded to whole ones */
    public static String time(double seconds) {
        long whole = Math.round(seconds);
        return String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole % 3600 / 60, whole % 60);
    }

    public static String percent(double share) {
        return number(100 * share, DECIMALS_OF_SHARE - 2) + NO_BREAK + "%";
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
