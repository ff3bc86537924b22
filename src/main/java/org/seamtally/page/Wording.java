package org.seamtally.page;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.seamtally.wire.Figures;
import org.seamtally.wire.Quantity;
import org.seamtally.wire.SettingsAnswer;

/** Figures and words as they stand on paper. */
final class Wording {

    /** Figures that a group of digits, or a unit, must not be torn from. */
    private static final char NO_BREAK = Figures.NO_BREAK;

    // the month in letters: 3/4 is another day on the other side of an ocean
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    // a sixteenth of an inch takes four
    private static final int MOST_DECIMALS = 4;

    private static final double SECONDS_AN_HOUR = 3600;

    // up to here nobody converts
    private static final double LONGEST_IN_SECONDS = 100;

    private Wording() {}

    static String day(LocalDate date) {
        return DAY.format(date).replace(' ', NO_BREAK);
    }

    /** A unit's symbol with the signs that paper has. */
    static String unit(String symbol) {
        return signs(Figures.sign(symbol));
    }

    /** A text with the degree sign where it has the word for it. */
    static String signs(String text) {
        return text.replaceAll("\\bdeg([CF])\\b", "°$1").replaceAll(" ?\\bdeg\\b", "°");
    }

    /** What was worked out: four significant digits. */
    static String worked(Quantity quantity) {
        return quantity == null ? "–" : kept(Figures.four(quantity)) + NO_BREAK + unit(quantity.unit());
    }

    /** What was asked for or set. */
    static String set(Quantity quantity) {
        return quantity == null ? "–" : setFigure(quantity) + NO_BREAK + unit(quantity.unit());
    }

    /** Four significant digits and decimals at most, as settings have them, without zeros at the end. */
    static String setFigure(Quantity quantity) {
        String text = Figures.four(quantity);
        if (text.contains(".") && text.length() - text.indexOf('.') - 1 > MOST_DECIMALS) {
            text = Figures.plain(quantity.value());
        }
        return kept(text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text);
    }

    /** A time that is waited or held. */
    static String time(Quantity seconds) {
        boolean inSeconds = seconds.value() < LONGEST_IN_SECONDS;
        return kept(Figures.plain(Math.round(seconds.value() / (inSeconds ? 0.1 : 6)) / 10.0))
                + NO_BREAK
                + (inSeconds ? "s" : "min");
    }

    /** A time in hours. */
    static String hours(Quantity seconds) {
        double hours = hoursOf(seconds);
        return inHours(hours, decimalsOfHours(hours));
    }

    /** Times that come to a total, in hours: they add up to it as {@link #hours(Quantity)} tells it. */
    static List<String> hours(Quantity total, List<Quantity> parts) {
        double hours = hoursOf(total);
        int decimals = decimalsOfHours(hours);
        double[] rounded = Figures.addingUp(
                hours, decimals, parts.stream().mapToDouble(Wording::hoursOf).toArray());
        return Arrays.stream(rounded).mapToObj(part -> inHours(part, decimals)).toList();
    }

    private static double hoursOf(Quantity seconds) {
        return seconds.value() / SECONDS_AN_HOUR;
    }

    /** Less than ten hours are told finer: a small frame's parts would else be nothing, and many of them far off. */
    private static int decimalsOfHours(double hours) {
        return hours < 10 ? 2 : 1;
    }

    private static String inHours(double hours, int decimals) {
        return kept(Figures.number(hours, decimals)) + NO_BREAK + "h";
    }

    /** Parts of what was worked out: they add up to it as {@link #worked} tells it. */
    static List<String> parts(Quantity total, List<Quantity> parts) {
        return Figures.partsOf(total, parts).stream()
                .map(part -> kept(part) + NO_BREAK + unit(total.unit()))
                .toList();
    }

    /** What share each part is of the total: they add up to the whole. */
    static List<String> shares(Quantity total, List<Quantity> parts) {
        return Figures.shares(total, parts).stream().map(Wording::kept).toList();
    }

    static String money(String amount) {
        return kept(Figures.money(amount));
    }

    private static String kept(String figures) {
        return figures.replace(' ', NO_BREAK);
    }

    /** What a joint joins: each part's size, a tube's with its wall, the unit once. */
    static String parts(List<SettingsAnswer.JointPart> parts) {
        List<String> sizes = parts.stream().map(Wording::part).toList();
        boolean alike = sizes.size() > 1 && sizes.stream().distinct().count() == 1;
        String unit = NO_BREAK + unit(parts.get(0).wall().unit());
        return alike ? sizes.get(0) + unit + " to the same" : String.join(" to ", sizes) + unit;
    }

    private static String part(SettingsAnswer.JointPart part) {
        return part.outsideDiameter() == null
                ? "plate " + setFigure(part.wall())
                : setFigure(part.outsideDiameter()) + NO_BREAK + "×" + NO_BREAK + setFigure(part.wall());
    }

    /** A field's path in words: {@code gas.hose.insideDiameter} is the gas hose's inside diameter. */
    static String field(String path) {
        return path.replace('.', ' ')
                .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
                .toLowerCase(Locale.ROOT)
                // arc.arcEfficiency
                .replaceAll("\\b(\\w+) \\1\\b", "$1");
    }

    /** A reason as a customer reads it: what was said to whoever keeps the shop's figures is left out. */
    static String toCustomer(String because) {
        return because.replace("a decision of this project", "the program's choice")
                .replace("common practice, no source", "common practice")
                .replace(": fit it to your own timed welds", "")
                .replace("; measure it with the arc off", "");
    }

    /** Yes and no in place of the words that a request has for them. */
    static String truth(String value) {
        return value.replaceFirst("^true\\b", "yes").replaceFirst("^false\\b", "no");
    }

    static String sentence(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** A kind's name in words. */
    static String kind(String kind) {
        return kind.replace('-', ' ');
    }

    static String frames(int quantity) {
        return quantity == 1 ? "1 frame" : kept(Figures.number(quantity, 0)) + " frames";
    }
}
