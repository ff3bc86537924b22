package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Values by a schema of the API's description. A schema knows shapes, words and ranges; what it cannot know, such as that a
 * branch is no wider than its main tube, comes from its examples, which are varied a little.
 */
final class ValidValues {

    /** A quantity as examples write it: a decimal, a blank or bar, and a unit. */
    private static final Pattern QUANTITY = Pattern.compile("(\\d+(?:\\.\\d+)?)([ /].+)");

    private static final double OPTIONAL = 0.2;
    private static final double VARIED = 0.4;

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final ApiDocument document;

    ValidValues(ApiDocument document) {
        this.document = document;
    }

    /** A body of a media type: one of its examples with some fields changed, left out or added; or made by its schema alone. */
    JsonNode body(JsonNode media, Dice dice) {
        JsonNode schema = media.path("schema");
        List<JsonNode> examples = new ArrayList<>();
        media.path("examples").forEach(example -> examples.add(example.path("value")));
        if (media.has("example")) {
            examples.add(media.path("example"));
        }
        return examples.isEmpty() || dice.chance(0.3) ? value(schema, dice) : varied(dice.one(examples), schema, dice);
    }

    /** A value that fits a schema. */
    JsonNode value(JsonNode given, Dice dice) {
        JsonNode schema = document.resolved(given);
        List<JsonNode> alternatives = alternatives(schema);
        if (!alternatives.isEmpty()) {
            return value(dice.one(alternatives), dice);
        }
        if (schema.has("properties")) {
            return object(schema, dice);
        }
        if (schema.has("items")) {
            ArrayNode array = NODES.arrayNode();
            int least = schema.path("minItems").asInt(1);
            int most = Math.min(schema.path("maxItems").asInt(Integer.MAX_VALUE), Math.max(least, 1) + 2);
            for (int i = dice.from(Math.max(least, 1), most); i > 0; i--) {
                array.add(value(schema.path("items"), dice));
            }
            return array;
        }
        return leaf(given, schema, dice);
    }

    private JsonNode object(JsonNode schema, Dice dice) {
        List<String> required = new ArrayList<>();
        schema.path("required").forEach(name -> required.add(name.asText()));
        ObjectNode object = NODES.objectNode();
        schema.path("properties").properties().forEach(property -> {
            if (required.contains(property.getKey()) || dice.chance(OPTIONAL)) {
                object.set(property.getKey(), value(property.getValue(), dice));
            }
        });
        return object;
    }

    private JsonNode varied(JsonNode example, JsonNode given, Dice dice) {
        JsonNode schema = document.resolved(given);
        if (example.isObject()) {
            JsonNode shape = alternative(schema, example);
            List<String> required = new ArrayList<>();
            shape.path("required").forEach(name -> required.add(name.asText()));
            ObjectNode object = NODES.objectNode();
            for (Map.Entry<String, JsonNode> field : example.properties()) {
                if (required.contains(field.getKey()) || !dice.chance(OPTIONAL)) {
                    object.set(
                            field.getKey(),
                            varied(field.getValue(), shape.path("properties").path(field.getKey()), dice));
                }
            }
            if (dice.chance(OPTIONAL) && !shape.path("properties").isEmpty()) {
                Map.Entry<String, JsonNode> more =
                        dice.one(List.copyOf(shape.path("properties").properties()));
                if (!object.has(more.getKey())) {
                    object.set(more.getKey(), value(more.getValue(), dice));
                }
            }
            return object;
        }
        if (example.isArray()) {
            ArrayNode array = NODES.arrayNode();
            example.forEach(item -> array.add(varied(item, schema.path("items"), dice)));
            return array;
        }
        return dice.chance(VARIED) ? variedLeaf(example, schema, dice) : example;
    }

    private JsonNode leaf(JsonNode given, JsonNode schema, Dice dice) {
        JsonNode examples = given.has("examples") ? given.path("examples") : schema.path("examples");
        if (!examples.isEmpty()) {
            JsonNode example = examples.get(dice.below(examples.size()));
            return dice.chance(VARIED) ? variedLeaf(example, schema, dice) : example;
        }
        return switch (schema.path("type").asText()) {
            case "integer" -> NODES.numberNode(whole(schema, dice));
            case "number" -> NODES.numberNode(decimal(schema, dice));
            case "boolean" -> NODES.booleanNode(dice.chance(0.5));
            case "object" -> NODES.objectNode();
            default -> NODES.textNode(text(schema, dice));
        };
    }

    private JsonNode variedLeaf(JsonNode example, JsonNode schema, Dice dice) {
        if (schema.has("enum")) {
            return schema.path("enum").get(dice.below(schema.path("enum").size()));
        }
        if (example.isIntegralNumber() && schema.path("type").asText().equals("integer")) {
            return NODES.numberNode(whole(schema, dice));
        }
        if (example.isNumber()) {
            double varied = example.doubleValue() * dice.between(0.7, 1.4);
            double fitting = Math.max(
                    schema.path("minimum").asDouble(0),
                    Math.min(varied, schema.path("maximum").asDouble(varied)));
            return NODES.numberNode(new BigDecimal(fitting, new MathContext(4)));
        }
        if (example.isTextual()) {
            Matcher quantity = QUANTITY.matcher(example.textValue());
            if (quantity.matches() && !schema.has("maxLength")) {
                double varied = Double.parseDouble(quantity.group(1)) * dice.between(0.7, 1.4);
                return NODES.textNode(
                        new BigDecimal(varied, new MathContext(dice.from(2, 6))).toPlainString() + quantity.group(2));
            }
            if (schema.has("maxLength")) {
                // names are not to be alike
                String text = example.textValue() + " " + dice.below(100_000);
                return NODES.textNode(text.length() > schema.path("maxLength").asInt() ? example.textValue() : text);
            }
        }
        return example.isBoolean() ? NODES.booleanNode(dice.chance(0.5)) : example;
    }

    private static String text(JsonNode schema, Dice dice) {
        if (schema.has("enum")) {
            return schema.path("enum")
                    .get(dice.below(schema.path("enum").size()))
                    .asText();
        }
        return switch (schema.path("format").asText()) {
            case "uuid" -> new UUID(dice.bits(), dice.bits()).toString();
            case "date" -> "20" + dice.from(30, 99) + "-0" + dice.from(1, 9) + "-1" + dice.below(10);
            default -> "text " + dice.below(1000);
        };
    }

    /** Small ones above all: what is counted in thousands takes its time. */
    private static long whole(JsonNode schema, Dice dice) {
        long least = schema.path("minimum").asLong(0);
        long most = schema.path("maximum").asLong(1000);
        long reach = dice.chance(0.9) ? Math.min(most, least + 10) : most;
        return least + (long) Math.floor(dice.between(0, 1) * (reach - least + 1));
    }

    private static BigDecimal decimal(JsonNode schema, Dice dice) {
        double least = schema.path("minimum").asDouble(0);
        double most = schema.path("maximum").asDouble(Math.max(1, least));
        return new BigDecimal(dice.between(least, most), new MathContext(5));
    }

    private static List<JsonNode> alternatives(JsonNode schema) {
        List<JsonNode> found = new ArrayList<>();
        for (String word : List.of("oneOf", "anyOf")) {
            schema.path(word).forEach(found::add);
        }
        return found;
    }

    /** Of the alternatives of a schema, the one that an object says it is, or the first that is an object. */
    private JsonNode alternative(JsonNode schema, JsonNode object) {
        JsonNode discriminator = schema.path("discriminator");
        if (discriminator.has("mapping")) {
            String kind =
                    object.path(discriminator.path("propertyName").asText()).asText();
            String reference = discriminator.path("mapping").path(kind).asText();
            return reference.isEmpty() ? schema : document.root().at(reference.substring(1));
        }
        return alternatives(schema).stream()
                .map(document::resolved)
                .filter(shape -> shape.has("properties"))
                .findFirst()
                .orElse(schema);
    }
}
