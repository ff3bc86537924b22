package org.seamtally.api;

import java.lang.reflect.Field;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.annotations.media.DiscriminatorMapping;
import org.eclipse.microprofile.openapi.models.media.Discriminator;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.seamtally.catalogue.Element;
import org.seamtally.wire.FieldRule;
import org.seamtally.wire.NameOrAnalysis;

/**
 * Schemas of what is sent, read off the constraints that check it: a field reads as a bare token, so that its type and
 * range are not in its Java type.
 */
final class RequestSchemas {

    private static final String REFERENCE = "#/components/schemas/";

    private final Map<String, Schema> made = new TreeMap<>();

    /** The schemas of these classes and of all their parts, by name. */
    static Map<String, Schema> of(List<Class<?>> roots) {
        RequestSchemas schemas = new RequestSchemas();
        roots.forEach(schemas::reach);
        return schemas.made;
    }

    /** A reference to a class's schema, which is made where it was not yet. */
    private Schema reach(Class<?> type) {
        if (type == String.class) {
            return OASFactory.createSchema().addType(SchemaType.STRING);
        }
        String name = type.getSimpleName();
        if (!made.containsKey(name)) {
            // set before it is filled, so that a part that holds its like ends
            made.put(name, null);
            made.put(
                    name,
                    type == NameOrAnalysis.Analysis.class
                            ? analysis()
                            : alternatives(type) ? choice(type) : object(type));
        }
        return OASFactory.createSchema().ref(REFERENCE + name);
    }

    private static boolean alternatives(Class<?> type) {
        return said(type) != null && said(type).oneOf().length > 0;
    }

    private static org.eclipse.microprofile.openapi.annotations.media.Schema said(Class<?> type) {
        return type.getAnnotation(org.eclipse.microprofile.openapi.annotations.media.Schema.class);
    }

    /** An analysis: one property an element, each in its range. */
    private static Schema analysis() {
        Schema schema = OASFactory.createSchema()
                .addType(SchemaType.OBJECT)
                .description(said(NameOrAnalysis.Analysis.class).description())
                .additionalPropertiesBoolean(false)
                .addRequired(Element.C.symbol());
        for (Element element : Element.values()) {
            schema.addProperty(
                    element.symbol(),
                    OASFactory.createSchema()
                            .addType(SchemaType.NUMBER)
                            .description("Mass per cent.")
                            .addExample(new BigDecimal(NameOrAnalysis.most(element)).movePointLeft(1))
                            .minimum(new BigDecimal(NameOrAnalysis.least(element)))
                            .maximum(new BigDecimal(NameOrAnalysis.most(element))));
        }
        return schema;
    }

    /** A word of a list, or an analysis. */
    private Schema wordOrAnalysis(FieldRule rule) {
        Schema word = OASFactory.createSchema().addType(SchemaType.STRING);
        rule.words().forEach(word::addEnumeration);
        return OASFactory.createSchema().addOneOf(word).addOneOf(reach(NameOrAnalysis.Analysis.class));
    }

    /** One of several classes, told apart by a property where one is named. */
    private Schema choice(Class<?> type) {
        Schema schema = OASFactory.createSchema().description(said(type).description());
        for (Class<?> alternative : said(type).oneOf()) {
            schema.addOneOf(reach(alternative));
        }
        if (!said(type).discriminatorProperty().isEmpty()) {
            Discriminator discriminator =
                    OASFactory.createDiscriminator().propertyName(said(type).discriminatorProperty());
            for (DiscriminatorMapping mapping : said(type).discriminatorMapping()) {
                discriminator.addMapping(
                        mapping.value(), REFERENCE + mapping.schema().getSimpleName());
            }
            schema.setDiscriminator(discriminator);
        }
        return schema;
    }

    private Schema object(Class<?> type) {
        Schema schema = OASFactory.createSchema()
                .addType(SchemaType.OBJECT)
                .description(said(type) == null ? null : said(type).description())
                .additionalPropertiesBoolean(false);
        addDiscriminator(type, schema);
        FieldRule.fields(type).forEach(field -> {
            FieldRule rule = FieldRule.of(field);
            schema.addProperty(rule.field(), property(field, rule));
            if (rule.needed()) {
                schema.addRequired(rule.field());
            }
        });
        return schema;
    }

    /** One alternative of several says which it is. */
    private static void addDiscriminator(Class<?> type, Schema schema) {
        Class<?> choice = type.getSuperclass();
        if (choice == null || !alternatives(choice)) {
            return;
        }
        Arrays.stream(said(choice).discriminatorMapping())
                .filter(mapping -> mapping.schema() == type)
                .forEach(mapping -> {
                    String property = said(choice).discriminatorProperty();
                    schema.addProperty(
                            property,
                            OASFactory.createSchema()
                                    .addType(SchemaType.STRING)
                                    .description("Says that it is this kind: " + mapping.value() + ".")
                                    .addEnumeration(mapping.value())
                                    .addExample(mapping.value()));
                    schema.addRequired(property);
                });
    }

    private Schema property(Field field, FieldRule rule) {
        Schema schema = switch (rule.holds()) {
            case "part" -> reach(FieldRule.part(field));
            case "list" ->
                OASFactory.createSchema()
                        .addType(SchemaType.ARRAY)
                        .items(reach(FieldRule.part(field)))
                        .minItems(Integer.valueOf(rule.min()))
                        .maxItems(Integer.valueOf(rule.max()));
            case "word-or-analysis" -> wordOrAnalysis(rule);
            case "number", "whole-number" -> number(rule);
            case "true-or-false" -> OASFactory.createSchema().addType(SchemaType.BOOLEAN);
            default -> text(rule);
        };
        if (rule.example() != null) {
            schema.addExample(example(rule));
        }
        return schema.description(description(rule));
    }

    private static Schema number(FieldRule rule) {
        boolean whole = rule.holds().equals("whole-number");
        Schema schema = OASFactory.createSchema()
                .addType(whole ? SchemaType.INTEGER : SchemaType.NUMBER)
                .minimum(new BigDecimal(rule.min()));
        BigDecimal max = new BigDecimal(rule.max().replace("below ", ""));
        return rule.max().startsWith("below ") ? schema.exclusiveMaximum(max) : schema.maximum(max);
    }

    private static Schema text(FieldRule rule) {
        Schema schema = OASFactory.createSchema().addType(SchemaType.STRING);
        switch (rule.holds()) {
            case "word" -> rule.words().forEach(schema::addEnumeration);
            case "text" -> {
                schema.setMinLength(characters(rule.min()));
                schema.setMaxLength(characters(rule.max()));
            }
            case "date" -> schema.setFormat("date");
            default -> schema.setMinLength(1);
        }
        return schema;
    }

    /** The number in "40 characters". */
    private static Integer characters(String count) {
        return Integer.valueOf(count.substring(0, count.indexOf(' ')));
    }

    private static Object example(FieldRule rule) {
        return switch (rule.holds()) {
            case "number" -> new BigDecimal(rule.example());
            case "whole-number" -> Integer.valueOf(rule.example());
            case "true-or-false" -> Boolean.valueOf(rule.example());
            default -> rule.example();
        };
    }

    /** What it is, the range and the units that are taken, then what is assumed where it is left out. */
    private static String description(FieldRule rule) {
        String taken = taken(rule);
        int leftOut = rule.description().indexOf(" Left out:");
        return leftOut < 0
                ? rule.description() + taken
                : rule.description().substring(0, leftOut)
                        + taken
                        + rule.description().substring(leftOut);
    }

    private static String taken(FieldRule rule) {
        return switch (rule.holds()) {
            case "quantity" ->
                rule.units() == null
                        ? " A number with its unit."
                        : " " + rule.min() + " to " + rule.max() + "; " + or(rule.units()) + ".";
            case "price" -> " Money by a unit, not negative; " + or(rule.units()) + ".";
            case "sum" -> " Digits and a decimal point, not negative.";
            case "number", "whole-number" -> " " + rule.min() + " to " + rule.max() + ".";
            case "text" -> " " + characters(rule.min()) + " to " + rule.max() + ".";
            default -> "";
        };
    }

    private static String or(List<String> words) {
        int last = words.size() - 1;
        return last == 0
                ? words.get(0)
                : words.subList(0, last).stream().collect(Collectors.joining(", ")) + " or " + words.get(last);
    }
}
