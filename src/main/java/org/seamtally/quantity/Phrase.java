package org.seamtally.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Words with quantities in them, to be told in the reader's units. Whoever writes them knows the quantities; only whoever
 * shows them knows the units.
 *
 * @param words what stands before, between and after the quantities: one more than there are quantities
 * @param figures the quantities, in their order
 */
public record Phrase(List<String> words, List<Figure> figures) implements PhrasePart {

    /** What stands in a pattern where a part goes. */
    private static final String PLACE = "{}";

    /** @throws IllegalArgumentException where words and figures do not go together */
    public Phrase {
        words = List.copyOf(words);
        figures = List.copyOf(figures);
        if (words.size() != figures.size() + 1) {
            throw new IllegalArgumentException(words.size() + " words around " + figures.size() + " figures");
        }
    }

    /** Words that are the same in all units; braces in them are letters like others. */
    public static Phrase of(String words) {
        return new Phrase(List.of(words), List.of());
    }

    /**
     * Words with parts in them.
     *
     * @param pattern has {@code {}} where each part goes
     * @throws IllegalArgumentException where it has not as many of them as there are parts
     */
    public static Phrase of(String pattern, PhrasePart first, PhrasePart... others) {
        Told told = new Told();
        int from = told.upTo(pattern, 0);
        told.add(first);
        for (PhrasePart part : others) {
            from = told.upTo(pattern, from);
            told.add(part);
        }
        if (pattern.indexOf(PLACE, from) >= 0) {
            throw new IllegalArgumentException("\"" + pattern + "\" has places for more parts");
        }
        told.words(pattern.substring(from));
        return told.phrase();
    }

    /** Phrases one after the other, with words between them. */
    public static Phrase join(String between, List<Phrase> phrases) {
        Told told = new Told();
        for (int i = 0; i < phrases.size(); i++) {
            told.words(i == 0 ? "" : between);
            told.add(phrases.get(i));
        }
        return told.phrase();
    }

    /**
     * A figure that is written otherwise in the other units: a published one, or one that people know by its round number.
     *
     * @param si such as {@code 1.6 mm}
     * @param us such as {@code 1/16 in}
     */
    public static PhrasePart either(String si, String us) {
        return new Either(si, us);
    }

    /** A quantity of three digits or, where it has more before the point, of those; a temperature in whole degrees. */
    public static PhrasePart measured(Dimension dimension, double si) {
        return measured(dimension, si, 3);
    }

    /** @param digits at least so many, less zeros at the end */
    public static PhrasePart measured(Dimension dimension, double si, int digits) {
        return new Measured(dimension, si, digits);
    }

    /** By the first words alone, whose own hash is kept: phrases of one origin rarely begin alike and go on otherwise. */
    @Override
    public int hashCode() {
        return words.get(0).hashCode();
    }

    /** Whether it says nothing. */
    public boolean isBlank() {
        return figures.isEmpty() && words.get(0).isBlank();
    }

    /** The words with their quantities in these units. */
    public String in(UnitSystem units) {
        if (figures.isEmpty()) {
            return words.get(0);
        }
        StringBuilder text = new StringBuilder(words.get(0));
        for (int i = 0; i < figures.size(); i++) {
            text.append(figures.get(i).in(units)).append(words.get(i + 1));
        }
        return text.toString();
    }

    /** A quantity in a phrase. */
    public sealed interface Figure extends PhrasePart permits Either, Measured {

        String in(UnitSystem units);
    }

    private record Either(String si, String us) implements Figure {

        @Override
        public String in(UnitSystem units) {
            return units == UnitSystem.SI ? si : us;
        }
    }

    private record Measured(Dimension dimension, double si, int digits) implements Figure {

        @Override
        public String in(UnitSystem units) {
            Display shown = dimension.show(si, units);
            return BigDecimal.valueOf(shown.value())
                            .setScale(decimals(shown.value()), RoundingMode.HALF_UP)
                            .stripTrailingZeros()
                            .toPlainString()
                    + " " + shown.sign();
        }

        private int decimals(double value) {
            if (dimension == Dimension.TEMPERATURE || value == 0) {
                return 0;
            }
            return Math.max(0, digits - 1 - (int) Math.floor(Math.log10(Math.abs(value))));
        }
    }

    /** A phrase that is being put together. */
    private static final class Told {

        private final List<String> words = new ArrayList<>();
        private final List<Figure> figures = new ArrayList<>();
        private final StringBuilder open = new StringBuilder();

        /** Takes the words before the next place of a pattern; gives where that one ends. */
        int upTo(String pattern, int from) {
            int place = pattern.indexOf(PLACE, from);
            if (place < 0) {
                throw new IllegalArgumentException("\"" + pattern + "\" has places for fewer parts");
            }
            words(pattern.substring(from, place));
            return place + PLACE.length();
        }

        void words(String text) {
            open.append(text);
        }

        void add(PhrasePart part) {
            if (part instanceof Figure figure) {
                close(figure);
                return;
            }
            Phrase phrase = (Phrase) part;
            for (int i = 0; i < phrase.figures.size(); i++) {
                open.append(phrase.words.get(i));
                close(phrase.figures.get(i));
            }
            open.append(phrase.words.get(phrase.figures.size()));
        }

        private void close(Figure figure) {
            words.add(open.toString());
            open.setLength(0);
            figures.add(figure);
        }

        Phrase phrase() {
            words.add(open.toString());
            return new Phrase(words, figures);
        }
    }
}
