package org.seamtally.gas;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.atomic.LongAdder;

/**
 * Transients that were computed before, the least recently asked for dropped first. Any number of threads may ask; two
 * that ask for the same new one at once both compute it, which costs less than making one wait.
 */
public final class KnownTransients {

    /**
     * A transient holds some 10 kB and a shop has a handful of set-ups: this is 5 MB, and room for ten full comparisons.
     */
    public static final int USUAL_CAPACITY = 500;

    private final Map<SetUp, StartTransient> known;
    private final int capacity;
    private final LongAdder hits = new LongAdder();
    private final LongAdder misses = new LongAdder();

    /** @param capacity the most transients kept, at least 1 */
    public KnownTransients(int capacity) {
        if (capacity < 1) {
            throw new IllegalArgumentException("a store of " + capacity + " transients keeps nothing");
        }
        this.capacity = capacity;
        known = new LinkedHashMap<>(16, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<SetUp, StartTransient> eldest) {
                return size() > KnownTransients.this.capacity;
            }
        };
    }

    /** The start of this set-up on a filled hose. */
    public StartTransient of(SetUp setUp) {
        StartTransient found;
        synchronized (known) {
            found = known.get(setUp);
        }
        if (found != null) {
            hits.increment();
            return found;
        }
        misses.increment();
        StartTransient computed = StartTransient.of(setUp);
        synchronized (known) {
            known.put(setUp, computed);
        }
        return computed;
    }

    public int capacity() {
        return capacity;
    }

    /** How many are kept now. */
    public int size() {
        synchronized (known) {
            return known.size();
        }
    }

    /** How often one was asked for that was known. */
    public long hits() {
        return hits.sum();
    }

    /** How often one had to be computed. */
    public long misses() {
        return misses.sum();
    }
}
