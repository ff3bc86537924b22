package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A caller's own name is taken where it is fit, then its trace's. */
class RequestIdTest {

    private static final String TRACE = "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01";

    private static String of(String given, String trace) {
        return RequestId.of(given, trace, () -> "fresh");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a", "Order-7.line_3", "0123456789012345678901234567890123456789012345678901234567890123"})
    void aFitNameIsTaken(String given) {
        assertEquals(given, of(given, TRACE));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "a b",
                "a\nb",
                "a/b",
                "\u00e9",
                "<script>",
                "%0d",
                "01234567890123456789012345678901234567890123456789012345678901234"
            })
    void anUnfitNameIsNotTaken(String given) {
        assertEquals("fresh", of(given, null));
        assertEquals("4bf92f3577b34da6a3ce929d0e0e4736", of(given, TRACE));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "00-00000000000000000000000000000000-00f067aa0ba902b7-01",
                "00-4bf92f3577b34da6a3ce929d0e0e4736-0000000000000000-01",
                "ff-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01",
                "00-4BF92F3577B34DA6A3CE929D0E0E4736-00f067aa0ba902b7-01",
                "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7",
                "00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01-more",
                "4bf92f3577b34da6a3ce929d0e0e4736"
            })
    void anUnfitTraceIsNotTaken(String trace) {
        assertEquals("fresh", of(null, trace));
    }

    @Test
    void aTraceOfALaterVersionMayHaveMoreParts() {
        assertEquals(
                "4bf92f3577b34da6a3ce929d0e0e4736",
                of(null, "01-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01-more"));
    }
}
