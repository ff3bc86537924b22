package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Changes one field of a JSON text: its type, its size, its words, its place. */
final class FieldMutations {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** Tokens that no tree can hold: what stands for them is replaced where the text is written. */
    private static final List<String> RAW = List.of(
            "NaN",
            "-Infinity",
            "1e400",
            "-1e-400",
            "0.1e1000000000",
            "123456789012345678901234567890",
            "9".repeat(1200),
            "0." + "1".repeat(1200),
            "01",
            "+1",
            ".5",
            "-0",
            "0x10",
            "1.7976931348623157e308",
            "4.9e-324",
            "\"\\ud800\"",
            "\"\\u0000\"",
            "'single'",
            "undefined",
            "/* */ 1",
            "[".repeat(60) + "]".repeat(60),
            "{\"a\":".repeat(2000) + "1" + "}".repeat(2000),
            "[".repeat(5000),
            "1 mm");

    private static final Pattern PLACEHOLDER = Pattern.compile("\"\\\\u0001raw(\\d+)\"");

    private static final List<String> WORDS = List.of(
            "",
            " ",
            "NaN mm",
            "Infinity mm",
            "1e400 mm",
            "1e-400 mm",
            "1e999999999 mm",
            "0 mm",
            "-1 mm",
            "1/0 in",
            "1/3 in",
            "1-1/2 in",
            "999999999999/7 in",
            "1,5 mm",
            "1.5.5 mm",
            "5",
            "mm",
            "5 furlongs",
            "5 mm mm",
            "1e2 mm",
            "-40 degC",
            "-500 degC",
            "1 bar",
            "0 s",
            "1e300 h",
            "100000000/h",
            "0.000000000000001/kg",
            "1e5/h",
            "-5/h",
            "٣ mm",
            "５ mm",
            "1\u00A0mm",
            "1 µm",
            "\uD83D\uDD25",
            "\u202Emm 5",
            "e\u0301",
            "\u0000",
            "<script>",
            "=1+1",
            "' or 1=1 --",
            "plug",
            "tube-to-tube",
            "rivet",
            "USD",
            "XXX",
            "2030-02-30",
            "9999-12-31",
            "x".repeat(70),
            "y".repeat(5000));

    private FieldMutations() {}

    /** The text with what stands for tokens replaced by them. */
    static String unwrapped(String text) {
        return PLACEHOLDER
                .matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(RAW.get(Integer.parseInt(found.group(1)))));
    }

    /** A field, and where it stands. */
    private record Place(JsonNode holder, String name, int index, JsonNode value) {

        void put(JsonNode other) {
            if (holder instanceof ObjectNode object) {
                object.set(name, other);
            } else {
                ((ArrayNode) holder).set(index, other);
            }
        }
    }

    static JsonNode mutated(JsonNode given, Dice dice) {
        JsonNode tree = given.deepCopy();
        List<Place> places = new ArrayList<>();
        gather(tree, places);
        if (places.isEmpty() || dice.chance(0.02)) {
            return other(tree, dice);
        }
        Place place = dice.one(places);
        switch (dice.below(10)) {
            case 0 -> place.put(other(place.value(), dice));
            case 1 -> remove(place);
            case 2 -> unknownField(place, dice);
            case 3 -> place.put(NODES.textNode("\u0001raw" + dice.below(RAW.size())));
            case 4 -> place.put(NODES.textNode(dice.one(WORDS)));
            case 5 -> moved(place, dice.one(places));
            case 6 -> doubled(place, dice);
            default -> place.put(scaled(place.value(), dice));
        }
        return tree;
    }

    private static void gather(JsonNode node, List<Place> places) {
        if (node.isObject()) {
            node.properties().forEach(field -> {
                places.add(new Place(node, field.getKey(), -1, field.getValue()));
                gather(field.getValue(), places);
            });
        }
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            places.add(new Place(node, null, i, node.get(i)));
            gather(node.get(i), places);
        }
    }

    /** Of another type. */
    private static JsonNode other(JsonNode value, Dice dice) {
        List<JsonNode> others = List.of(
                NODES.nullNode(),
                NODES.booleanNode(true),
                NODES.numberNode(dice.from(-3, 3)),
                NODES.numberNode(1.5),
                NODES.textNode(value.isValueNode() ? value.asText() : "text"),
                NODES.arrayNode().add(value),
                NODES.arrayNode(),
                NODES.objectNode().set("value", value),
                NODES.objectNode());
        return dice.one(others);
    }

    private static void remove(Place place) {
        if (place.holder() instanceof ObjectNode object) {
            object.remove(place.name());
        } else {
            ((ArrayNode) place.holder()).remove(place.index());
        }
    }

    private static void unknownField(Place place, Dice dice) {
        if (place.holder() instanceof ObjectNode object) {
            object.set(dice.chance(0.5) ? "colour" : place.name() + "s", place.value());
        } else {
            ((ArrayNode) place.holder()).add("colour");
        }
    }

    private static void moved(Place from, Place to) {
        JsonNode copy = from.value().deepCopy();
        to.put(copy);
    }

    private static void doubled(Place place, Dice dice) {
        if (place.holder() instanceof ArrayNode array) {
            int times = dice.chance(0.02) ? 300 : dice.from(1, 4);
            for (int i = 0; i < times; i++) {
                array.add(place.value().deepCopy());
            }
        } else {
            place.put(NODES.arrayNode().add(place.value()).add(place.value()));
        }
    }

    /** Much more or much less of it, or its negative. */
    private static JsonNode scaled(JsonNode value, Dice dice) {
        BigDecimal factor = dice.one(List.of(
                new BigDecimal("0"),
                new BigDecimal("-1"),
                new BigDecimal("0.001"),
                new BigDecimal("0.1"),
                new BigDecimal("0.5"),
                new BigDecimal("2"),
                new BigDecimal("10"),
                new BigDecimal("1000"),
                new BigDecimal("1e9")));
        if (value.isNumber()) {
            return NODES.numberNode(value.decimalValue().multiply(factor));
        }
        Matcher number = Pattern.compile("^-?\\d+(\\.\\d+)?").matcher(value.isTextual() ? value.textValue() : "");
        if (number.find()) {
            return NODES.textNode(
                    new BigDecimal(number.group()).multiply(factor).toPlainString()
                            + value.textValue().substring(number.end()));
        }
        return other(value, dice);
    }
}
