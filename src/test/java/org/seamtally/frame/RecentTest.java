package org.seamtally.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecentTest {

    @ParameterizedTest
    @ValueSource(ints = {1, 7})
    void knowsWhatItComputedAndDropsTheOldest(int capacity) {
        Recent<Integer, Object> recent = new Recent<>(capacity, key -> new Object());
        for (int i = 0; i <= capacity; i++) {
            recent.of(i);
        }
        assertEquals(0, recent.hits());
        assertEquals(capacity + 1, recent.misses());
        assertEquals(capacity, recent.size());
        assertEquals(capacity, recent.capacity());
        Object last = recent.of(capacity);
        assertEquals(1, recent.hits());
        assertSame(last, recent.of(capacity));
        assertEquals(2, recent.hits());
        // the first was dropped
        recent.of(0);
        assertEquals(capacity + 2, recent.misses());
        assertEquals(2, recent.hits());
    }

    @Test
    void whatIsAskedForAgainIsKeptLonger() {
        Recent<String, Integer> recent = new Recent<>(2, String::length);
        recent.of("a");
        recent.of("bb");
        recent.of("a");
        recent.of("ccc");
        assertEquals(1, recent.of("a"));
        assertEquals(2, recent.hits());
        assertEquals(2, recent.of("bb"));
        assertEquals(4, recent.misses());
    }

    @Test
    void aStoreOfNothingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Recent<>(0, key -> key));
    }
}
