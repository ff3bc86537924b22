package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** Each subject has a bucket of its own, which fills at a steady rate. */
class RatesTest {

    private static final long SECOND = 1_000_000_000L;

    private long now = 17 * SECOND;
    private final Rates rates = new Rates(2, 3, () -> now);

    private long take(String subject, int times) {
        long wait = 0;
        for (int i = 0; i < times; i++) {
            wait = rates.take(subject);
        }
        return wait;
    }

    @Test
    void aBurstIsTakenAndOneMoreIsNot() {
        assertEquals(0, take("a", 3));
        assertEquals(1, rates.take("a"));
    }

    @Test
    void theBucketFillsAtItsRateAndNoFurtherThanItsSize() {
        take("a", 3);
        now += SECOND / 2 - 1;
        assertEquals(1, rates.take("a"));
        now += 1;
        assertEquals(0, rates.take("a"));
        assertEquals(1, rates.take("a"));
        now += 100 * SECOND;
        assertEquals(0, take("a", 3));
        assertEquals(1, rates.take("a"));
    }

    @Test
    void oneSubjectDoesNotTakeFromAnother() {
        take("a", 4);
        assertEquals(0, rates.take("b"));
    }

    @Test
    void whenToComeAgainIsSaid() {
        Rates slow = new Rates(0.1, 1, () -> now);
        assertEquals(0, slow.take("a"));
        assertEquals(10, slow.take("a"));
        now += 9 * SECOND;
        assertEquals(1, slow.take("a"));
        now += SECOND;
        assertEquals(0, slow.take("a"));
    }

    @Test
    void thereIsAnEndToWhatIsRemembered() {
        take("first", 4);
        for (int i = 0; i < Rates.MOST_SUBJECTS - 1; i++) {
            rates.take("s" + i);
        }
        assertEquals(1, rates.take("first"));
        for (int i = 0; i < Rates.MOST_SUBJECTS; i++) {
            rates.take("t" + i);
        }
        assertEquals(Rates.MOST_SUBJECTS, rates.subjects());
        assertEquals(0, rates.take("first"));
    }

    @Test
    void aRateThatLetsNobodyInIsNone() {
        assertThrows(IllegalArgumentException.class, () -> new Rates(0, 1, () -> now));
        assertThrows(IllegalArgumentException.class, () -> new Rates(Double.NaN, 1, () -> now));
        assertThrows(IllegalArgumentException.class, () -> new Rates(1, 0, () -> now));
    }
}
