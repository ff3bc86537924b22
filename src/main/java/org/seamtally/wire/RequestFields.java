package org.seamtally.wire;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.seamtally.frame.GivenJoint;

/**
 * A quote's request as its single values by where they stand, each as it was sent. Items of a list are told apart by what they
 * are called, so that one put in between moves no other: joints by their marks, lines of the shop's own by what they are for.
 */
final class RequestFields {

    // digit for digit
    private static final ObjectReader TREES = Json.mapper()
            .reader()
            .with(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .without(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES);

    private static final String PRICES = "prices";
    private static final String OTHER_WORK = "otherWork";

    private final Map<String, String> fields = new LinkedHashMap<>();

    private RequestFields() {}

    /**
     * The values of a request.
     *
     * @param book prices of the price book that it names, which stand as if they had been sent
     */
    static Map<String, String> of(byte[] request, Optional<byte[]> book) {
        ObjectNode root = (ObjectNode) tree(request);
        if (book.isPresent()) {
            ObjectNode prices = (ObjectNode) tree(book.get());
            if (root.path(OTHER_WORK).isArray()) {
                root.path(OTHER_WORK).forEach(prices.withArray(OTHER_WORK)::add);
            }
            root.remove(OTHER_WORK);
            root.set(PRICES, prices);
        }
        RequestFields gathered = new RequestFields();
        gathered.gather("", root);
        return gathered.fields;
    }

    private static JsonNode tree(byte[] json) {
        try {
            return TREES.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException("what is kept was read before", e);
        }
    }

    private void gather(String path, JsonNode node) {
        if (node.isObject()) {
            node.properties()
                    .forEach(field ->
                            gather(path.isEmpty() ? field.getKey() : path + "." + field.getKey(), field.getValue()));
        } else if (node.isArray()) {
            Map<String, Integer> seen = new HashMap<>();
            for (int i = 0; i < node.size(); i++) {
                String name = name(node.get(i), i);
                int occurrence = seen.merge(name, 1, Integer::sum);
                gather(path + "[" + name + (occurrence == 1 ? "" : " (" + occurrence + ")") + "]", node.get(i));
            }
        } else if (!node.isNull()) {
            fields.put(path, node.toString());
        }
    }

    /** What an item is called; its number where it has no name. */
    private static String name(JsonNode item, int index) {
        for (String name : new String[] {"mark", "item"}) {
            if (item.path(name).isTextual()) {
                return item.path(name).asText();
            }
        }
        return GivenJoint.markOf(index);
    }
}
