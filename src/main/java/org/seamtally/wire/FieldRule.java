package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.quantity.Dimension;
import org.seamtally.quantity.ToldRange;

/** What a field of a request may hold, read off its constraints: documents, pages and tables draw from it. */
@Schema(description = "What a field of a request may hold.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record FieldRule(
        @Schema(
                description = "The field, with a dot for each part it is in.",
                required = true,
                examples = "branch.wall")
        String field,

        @Schema(
                description = "quantity (a string with a unit), number, whole-number, true-or-false, text, word, price"
                        + " (money by a unit), sum (of money), date, part (an object) or list.",
                required = true,
                examples = "quantity")
        String holds,

        @Schema(description = "Whether it is needed.", required = true)
        boolean needed,

        @Schema(description = "What it is, in plain words.", required = true)
        String description,

        @Schema(description = "The least that is taken.", examples = "0.2 mm")
        String min,

        @Schema(description = "The most that is taken.", examples = "50 mm")
        String max,

        @Schema(description = "The same range as people say it, for a quantity: round figures inside what is taken.")
        Told told,

        @Schema(description = "Units that are taken.") List<String> units,
        @Schema(description = "Words that are taken.") List<String> words,

        @Schema(description = "One that would be taken.", examples = "0.095 in")
        String example) {

    /** A range in words. */
    @Schema(description = "A range in words, in each system of units.")
    public record Told(
            @Schema(description = "In millimetres, litres and so on.", required = true, examples = "0.2 to 50 mm")
            String si,

            @Schema(description = "In inches, cubic feet and so on.", required = true, examples = "0.0079 to 1.95 in")
            String us) {

        private static Told of(Rule rule) {
            if (rule.dimension == null) {
                return null;
            }
            ToldRange range = ToldRange.of(rule.dimension, rule.min, rule.max);
            return new Told(range.si(), range.us());
        }
    }

    /** The rules of a request's own fields, in the order they are declared, those of its base class last. */
    public static List<FieldRule> of(Class<?> type) {
        return fields(type).map(FieldRule::of).toList();
    }

    /** The same with the fields of its parts in their place. */
    public static List<FieldRule> deep(Class<?> type) {
        List<FieldRule> all = new ArrayList<>();
        eachDeep(type, (rule, field) -> all.add(rule));
        return all;
    }

    /** Visits every field that holds no part, its rule named by the whole path to it. */
    static void eachDeep(Class<?> type, BiConsumer<FieldRule, Field> visitor) {
        fields(type).forEach(field -> {
            FieldRule rule = of(field);
            if (rule.holds.equals("part")) {
                eachDeep(field.getType(), (inner, leaf) -> visitor.accept(inner.in(rule), leaf));
            } else {
                visitor.accept(rule, field);
            }
        });
    }

    private FieldRule in(FieldRule part) {
        return new FieldRule(
                part.field + "." + field,
                holds,
                needed && part.needed,
                description,
                min,
                max,
                told,
                units,
                words,
                example);
    }

    /** A request's fields, those of its base class last; the fields of a part marked {@link Beside} in its place. */
    public static Stream<Field> fields(Class<?> type) {
        if (type == Object.class || type == Record.class) {
            return Stream.empty();
        }
        return Stream.concat(
                Arrays.stream(type.getDeclaredFields())
                        .filter(f -> !Modifier.isStatic(f.getModifiers()))
                        .flatMap(f -> f.isAnnotationPresent(Beside.class) ? fields(f.getType()) : Stream.of(f)),
                fields(type.getSuperclass()));
    }

    /** The part that a field holds, or that its list holds; null where it holds a single value. */
    public static Class<?> part(Field field) {
        if (field.getType() == Leaf.class || field.getType() == NameOrAnalysis.class) {
            return null;
        }
        Type inner = field.getGenericType();
        return inner instanceof ParameterizedType list ? (Class<?>) list.getActualTypeArguments()[0] : field.getType();
    }

    /** The rule of one field. */
    public static FieldRule of(Field field) {
        Schema schema = field.getAnnotation(Schema.class);
        String description = schema == null ? "" : schema.description();
        String example = schema == null || schema.examples().length == 0 ? null : schema.examples()[0];
        boolean needed = field.isAnnotationPresent(NotNull.class);
        Rule rule = rule(field);
        return new FieldRule(
                field.getName(),
                rule.holds,
                needed,
                description,
                rule.min,
                rule.max,
                Told.of(rule),
                rule.units,
                rule.words,
                example == null ? rule.example : example);
    }

    private record Rule(
            String holds,
            String min,
            String max,
            Dimension dimension,
            List<String> units,
            List<String> words,
            String example) {

        Rule(String holds, String min, String max, List<String> units, List<String> words, String example) {
            this(holds, min, max, null, units, words, example);
        }
    }

    private static Rule rule(Field field) {
        Within within = field.getAnnotation(Within.class);
        if (within != null) {
            return new Rule(
                    "quantity",
                    within.min(),
                    within.max(),
                    within.value(),
                    within.value().unitsTaken(),
                    null,
                    within.value().example());
        }
        Share share = field.getAnnotation(Share.class);
        if (share != null) {
            return new Rule(
                    "number", share.min(), (share.below() ? "below " : "") + share.max(), null, null, share.max());
        }
        Whole whole = field.getAnnotation(Whole.class);
        if (whole != null) {
            return new Rule(
                    "whole-number",
                    Integer.toString(whole.min()),
                    Integer.toString(whole.max()),
                    null,
                    null,
                    Integer.toString(whole.min()));
        }
        Text text = field.getAnnotation(Text.class);
        if (text != null) {
            return new Rule("text", "1 character", text.max() + " characters", null, null, null);
        }
        Word word = field.getAnnotation(Word.class);
        if (word != null) {
            List<String> words = word.value().list();
            return new Rule("word", null, null, null, words, words.get(0));
        }
        WordOrAnalysis either = field.getAnnotation(WordOrAnalysis.class);
        if (either != null) {
            List<String> words = either.value().list();
            return new Rule("word-or-analysis", null, null, null, words, words.get(0));
        }
        Price price = field.getAnnotation(Price.class);
        if (price != null) {
            List<String> units = Arrays.stream(price.value())
                    .map(Dimension::unitsTaken)
                    .flatMap(List::stream)
                    .map(unit -> "/" + unit)
                    .distinct()
                    .toList();
            return new Rule("price", "0", Price.MOST, units, null, null);
        }
        return unranged(field);
    }

    private static Rule unranged(Field field) {
        if (field.isAnnotationPresent(Truth.class)) {
            return new Rule("true-or-false", null, null, null, null, "true");
        }
        if (field.isAnnotationPresent(Sum.class)) {
            return new Rule("sum", "0", "999999999999.999", null, null, "120.00");
        }
        if (field.isAnnotationPresent(Date.class)) {
            return new Rule("date", null, null, null, null, Date.EXAMPLE);
        }
        Size size = field.getAnnotation(Size.class);
        if (size != null) {
            return new Rule(
                    "list",
                    String.format(Locale.ROOT, "%d", size.min()),
                    Integer.toString(size.max()),
                    null,
                    null,
                    null);
        }
        return field.getType() == Leaf.class
                ? new Rule("quantity", null, null, null, null, null)
                : new Rule("part", null, null, null, null, null);
    }
}
