package org.seamtally.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;

/** Answers compared. */
final class Answers {

    private Answers() {}

    /** The same fields with the same values, numbers within a relative tolerance. */
    static void assertAlike(JsonNode expected, JsonNode actual, double tolerance) {
        compare("", expected, actual, tolerance, false);
    }

    /** Everything that is expected is there and alike; more fields may be. */
    static void assertHolds(JsonNode expected, JsonNode actual, double tolerance) {
        compare("", expected, actual, tolerance, true);
    }

    private static void compare(String path, JsonNode expected, JsonNode actual, double tolerance, boolean more) {
        if (expected.isNumber() && actual.isNumber()) {
            double value = expected.doubleValue();
            assertEquals(value, actual.doubleValue(), tolerance * Math.abs(value), path);
            return;
        }
        assertEquals(expected.getNodeType(), actual.getNodeType(), path);
        if (expected.isObject()) {
            expected.properties().forEach(field -> {
                assertTrue(actual.has(field.getKey()), path + "." + field.getKey() + " is gone");
                compare(path + "." + field.getKey(), field.getValue(), actual.get(field.getKey()), tolerance, more);
            });
            assertTrue(more || expected.size() == actual.size(), path + ": " + actual);
        } else if (expected.isArray()) {
            assertEquals(expected.size(), actual.size(), "length of " + path);
            for (int i = 0; i < expected.size(); i++) {
                compare(path + "[" + i + "]", expected.get(i), actual.get(i), tolerance, more);
            }
        } else {
            assertEquals(expected, actual, path);
        }
    }
}
