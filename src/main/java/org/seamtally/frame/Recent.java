package org.seamtally.frame;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Function;

/**
 * Results that were computed before, the least recently asked for dropped first. Any number of threads may ask; two that
 * ask for the same new one at once both compute it, which costs less than making one wait.
 *
 * @param <K> what a result is computed from, all of it
 * @param <V> the result, which does not change
 */
public final class Recent<K, V> {

    private final Map<K, V> known;
    private final int capacity;
    private final Function<K, V> compute;
    private final LongAdder hits = new LongAdder();
    private final LongAdder misses = new LongAdder();

    /**
     * @param capacity the most results kept, at least 1
     * @param compute gives the same result for the same key
     */
    Recent(int capacity, Function<K, V> compute) {
        if (capacity < 1) {
            throw new IllegalArgumentException("a store of " + capacity + " results keeps nothing");
        }
        this.capacity = capacity;
        this.compute = compute;
        known = new LinkedHashMap<>(16, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > Recent.this.capacity;
            }
        };
    }

    /** The result for this key. */
    V of(K key) {
        V found;
        synchronized (known) {
            found = known.get(key);
        }
        if (found != null) {
            hits.increment();
            return found;
        }
        misses.increment();
        V computed = compute.apply(key);
        synchronized (known) {
            known.put(key, computed);
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
