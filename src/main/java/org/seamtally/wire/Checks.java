package org.seamtally.wire;

import jakarta.validation.ConstraintValidator;
import jakarta.validation.ConstraintValidatorContext;
import java.lang.annotation.Annotation;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.hibernate.validator.constraintvalidation.HibernateConstraintValidatorContext;
import org.seamtally.catalogue.Element;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.QuantityException;
import org.seamtally.quantity.Rate;
import org.seamtally.quantity.ToldRange;

/** The constraints on the fields of a request, public only because the validator makes them. A field that was left out fits: that it is needed is said elsewhere. */
public final class Checks {

    private Checks() {}

    /** A constraint on one leaf: says what is wrong with it, or nothing. */
    private abstract static class LeafCheck<A extends Annotation> implements ConstraintValidator<A, Leaf> {

        /** @return null where it fits */
        abstract Contradictions.Finding look(Leaf leaf);

        @Override
        public boolean isValid(Leaf leaf, ConstraintValidatorContext context) {
            Contradictions.Finding finding = leaf == null ? null : look(leaf);
            if (finding == null) {
                return true;
            }
            context.unwrap(HibernateConstraintValidatorContext.class).withDynamicPayload(finding);
            return false;
        }
    }

    private static Contradictions.Finding finding(String key, String message, Leaf leaf, List<String> taken) {
        return new Contradictions.Finding(key, message, leaf.given(), taken);
    }

    private static Contradictions.Finding finding(QuantityException e, Leaf leaf) {
        return finding(e.key(), Quoted.whole(e.getMessage()), leaf, e.taken());
    }

    public static final class WithinCheck extends LeafCheck<Within> {

        private Dimension dimension;
        private double min;
        private double max;
        private Within range;

        @Override
        public void initialize(Within within) {
            range = within;
            dimension = within.value();
            min = dimension.read(within.min());
            max = dimension.read(within.max());
        }

        @Override
        Contradictions.Finding look(Leaf leaf) {
            if (leaf.kind() == Leaf.Kind.TRUTH) {
                return finding(
                        Violation.Key.NOT_TEXT,
                        dimension.words() + " with its unit is due, such as \"" + dimension.example() + "\"",
                        leaf,
                        dimension.unitsTaken());
            }
            double value;
            try {
                value = dimension.read(leaf.text());
            } catch (QuantityException e) {
                return finding(e, leaf);
            }
            return value >= min && value <= max
                    ? null
                    : finding(Violation.Key.OUT_OF_RANGE, "taken here: " + told(), leaf, dimension.unitsTaken());
        }

        /** As it is kept to, and in the other units as people say it: who typed inches reads inches. */
        private String told() {
            ToldRange told = ToldRange.of(dimension, range.min(), range.max());
            return range.min() + " to " + range.max() + (told.us().equals(told.si()) ? "" : " (" + told.us() + ")");
        }
    }

    public static final class ShareCheck extends LeafCheck<Share> {

        private BigDecimal min;
        private BigDecimal max;
        private boolean below;
        private String range;

        @Override
        public void initialize(Share share) {
            min = new BigDecimal(share.min());
            max = new BigDecimal(share.max());
            below = share.below();
            range = share.min() + " to " + (below ? "below " : "") + share.max();
        }

        @Override
        Contradictions.Finding look(Leaf leaf) {
            if (leaf.kind() != Leaf.Kind.NUMBER) {
                return finding(Violation.Key.NOT_A_NUMBER, "a bare number is due, " + range, leaf, null);
            }
            BigDecimal value = Read.tryDecimal(leaf);
            boolean fits = value != null
                    && value.compareTo(min) >= 0
                    && (below ? value.compareTo(max) < 0 : value.compareTo(max) <= 0);
            return fits
                    ? null
                    : finding(
                            Violation.Key.OUT_OF_RANGE,
                            "taken here: " + range + ", with at most " + Read.MOST_DECIMALS + " decimals",
                            leaf,
                            null);
        }
    }

    public static final class WholeCheck extends LeafCheck<Whole> {

        private static final Pattern WHOLE = Pattern.compile("-?[0-9]+");

        private int min;
        private int max;

        @Override
        public void initialize(Whole whole) {
            min = whole.min();
            max = whole.max();
        }

        @Override
        Contradictions.Finding look(Leaf leaf) {
            String range = min + " to " + max;
            if (leaf.kind() != Leaf.Kind.NUMBER) {
                return finding(Violation.Key.NOT_A_NUMBER, "a bare whole number is due, " + range, leaf, null);
            }
            if (!WHOLE.matcher(leaf.text()).matches()) {
                return finding(Violation.Key.NOT_WHOLE, "a whole number is due, " + range, leaf, null);
            }
            // ten digits are past any range here
            boolean fits = leaf.text().length() <= 10
                    && Long.parseLong(leaf.text()) >= min
                    && Long.parseLong(leaf.text()) <= max;
            return fits ? null : finding(Violation.Key.OUT_OF_RANGE, "taken here: " + range, leaf, null);
        }
    }

    public static final class TruthCheck extends LeafCheck<Truth> {

        @Override
        Contradictions.Finding look(Leaf leaf) {
            return leaf.kind() == Leaf.Kind.TRUTH
                    ? null
                    : finding(Violation.Key.NOT_A_TRUTH, "true or false is due", leaf, List.of("true", "false"));
        }
    }

    public static final class TextCheck extends LeafCheck<Text> {

        private int max;
        private boolean lines;

        @Override
        public void initialize(Text text) {
            max = text.max();
            lines = text.lines();
        }

        @Override
        Contradictions.Finding look(Leaf leaf) {
            if (leaf.kind() != Leaf.Kind.TEXT) {
                return finding(Violation.Key.NOT_TEXT, "words in quotes are due", leaf, null);
            }
            if (leaf.text().isBlank()) {
                return finding(Violation.Key.EMPTY, "at least one letter is due", leaf, null);
            }
            if (leaf.text().length() > max) {
                return finding(Violation.Key.TOO_LONG, "at most " + max + " characters", leaf, null);
            }
            return leaf.text().chars().noneMatch(c -> Character.isISOControl(c) && !(lines && c == '\n'))
                            && Quoted.whole(leaf.text()).equals(leaf.text())
                    ? null
                    : finding(Violation.Key.NOT_TEXT, "no control characters and no halves of letters", leaf, null);
        }
    }

    public static final class WordCheck extends LeafCheck<Word> {

        private Words words;

        @Override
        public void initialize(Word word) {
            words = word.value();
        }

        @Override
        Contradictions.Finding look(Leaf leaf) {
            return unknownWord(words, words.meaning() + " is due", leaf);
        }
    }

    /** @return null where the list has the word */
    private static Contradictions.Finding unknownWord(Words words, String due, Leaf leaf) {
        if (leaf.kind() == Leaf.Kind.TEXT && words.find(leaf.text()) != null) {
            return null;
        }
        String nearest = Nearest.to(leaf.text(), words.list());
        String message = due + (nearest == null ? "" : "; the nearest is \"" + nearest + "\"");
        return finding(Violation.Key.UNKNOWN_WORD, message, leaf, words.list());
    }

    public static final class WordOrAnalysisCheck implements ConstraintValidator<WordOrAnalysis, NameOrAnalysis> {

        private Words words;

        @Override
        public void initialize(WordOrAnalysis constraint) {
            words = constraint.value();
        }

        @Override
        public boolean isValid(NameOrAnalysis given, ConstraintValidatorContext context) {
            if (given == null) {
                return true;
            }
            return given.analysis() == null ? fits(given.name(), context) : fits(given.analysis(), context);
        }

        private boolean fits(Leaf name, ConstraintValidatorContext context) {
            Contradictions.Finding finding = unknownWord(words, words.meaning() + ", or an analysis, is due", name);
            if (finding != null) {
                context.unwrap(HibernateConstraintValidatorContext.class).withDynamicPayload(finding);
            }
            return finding == null;
        }

        private static boolean fits(Map<Element, Leaf> analysis, ConstraintValidatorContext context) {
            context.disableDefaultConstraintViolation();
            Contradictions contradictions = new Contradictions(context);
            if (!analysis.containsKey(Element.C)) {
                contradictions.add(
                        Element.C.symbol(), Violation.Key.MISSING, "an analysis of a steel names its carbon", null);
            }
            analysis.forEach((element, leaf) -> {
                Contradictions.Finding finding = leaf == null ? null : share(element, leaf);
                if (finding != null) {
                    contradictions.add(element.symbol(), finding.key(), finding.message(), leaf);
                }
            });
            return !contradictions.any();
        }

        private static Contradictions.Finding share(Element element, Leaf leaf) {
            String range = NameOrAnalysis.least(element) + " to " + NameOrAnalysis.most(element);
            if (leaf.kind() != Leaf.Kind.NUMBER) {
                return finding(Violation.Key.NOT_A_NUMBER, "mass per cent as a bare number, " + range, leaf, null);
            }
            BigDecimal value = Read.tryDecimal(leaf);
            boolean fits = value != null
                    && value.compareTo(new BigDecimal(NameOrAnalysis.least(element))) >= 0
                    && value.compareTo(new BigDecimal(NameOrAnalysis.most(element))) <= 0;
            return fits ? null : finding(Violation.Key.OUT_OF_RANGE, "mass per cent taken here: " + range, leaf, null);
        }
    }

    public static final class PriceCheck extends LeafCheck<Price> {

        private static final BigDecimal MOST = new BigDecimal(Price.MOST);
        private Dimension[] dimensions;

        @Override
        public void initialize(Price price) {
            dimensions = price.value();
        }

        @Override
        Contradictions.Finding look(Leaf leaf) {
            List<String> taken = new ArrayList<>();
            QuantityException first = null;
            for (Dimension dimension : dimensions) {
                try {
                    Rate rate = Rate.read(leaf.text(), dimension);
                    return rate.amount().signum() >= 0 && rate.amount().compareTo(MOST) <= 0
                            ? null
                            : finding(
                                    Violation.Key.OUT_OF_RANGE, "a price is not negative, at most " + MOST, leaf, null);
                } catch (QuantityException e) {
                    first = first == null ? e : first;
                    taken.addAll(e.taken());
                }
            }
            String key = first == null ? Violation.Key.NOT_TEXT : first.key();
            String message = dimensions.length == 1 && first != null
                    ? Quoted.whole(first.getMessage())
                    : "money by a unit is due, such as \"4.50"
                            + taken.stream().findFirst().orElse("/h") + "\"";
            return finding(key, message, leaf, taken);
        }
    }

    public static final class SumCheck extends LeafCheck<Sum> {

        // twelve digits before the point and three behind it hold every sum of every currency
        private static final Pattern SUM = Pattern.compile("[0-9]{1,12}(\\.[0-9]{1,3})?");

        @Override
        Contradictions.Finding look(Leaf leaf) {
            boolean fits =
                    leaf.kind() == Leaf.Kind.TEXT && SUM.matcher(leaf.text()).matches();
            return fits
                    ? null
                    : finding(
                            Violation.Key.NOT_TEXT,
                            "a sum of money in quotes is due, such as \"120.00\": digits and a decimal point, not negative",
                            leaf,
                            null);
        }
    }

    public static final class DateCheck extends LeafCheck<Date> {

        @Override
        Contradictions.Finding look(Leaf leaf) {
            return Read.tryDate(leaf) != null
                    ? null
                    : finding(
                            Violation.Key.NOT_A_DATE,
                            "a day in quotes is due, year-month-day, such as \"" + Date.EXAMPLE + "\"",
                            leaf,
                            null);
        }
    }

    /** Has a part check itself. */
    public static final class Across implements ConstraintValidator<CrossCheck, CrossChecked> {

        @Override
        public boolean isValid(CrossChecked part, ConstraintValidatorContext context) {
            context.disableDefaultConstraintViolation();
            Contradictions contradictions = new Contradictions(context);
            part.check(contradictions);
            return !contradictions.any();
        }
    }
}
