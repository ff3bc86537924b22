package org.seamtally.api;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * How often each subject may ask: a bucket of tokens apiece, filled at a steady rate; a request takes one. At most
 * {@value #MOST_SUBJECTS} subjects are remembered; whoever has not asked for longest is forgotten first, and finds a full
 * bucket when he comes again, as he would after so long.
 */
final class Rates {

    static final int MOST_SUBJECTS = 10_000;

    private static final double NANOSECONDS = 1e9;

    private final double perSecond;
    private final double burst;
    private final LongSupplier nanoseconds;
    private final Map<String, Bucket> buckets = new LinkedHashMap<>(64, 0.75f, true) {

        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Bucket> eldest) {
            return size() > MOST_SUBJECTS;
        }
    };

    private static final class Bucket {
        private double tokens;
        private long filled;
    }

    /**
     * @param perSecond requests that may come for ever, more than 0
     * @param burst requests that may come at once after a rest, at least 1
     * @param nanoseconds since some moment
     */
    Rates(double perSecond, int burst, LongSupplier nanoseconds) {
        if (!(perSecond > 0) || burst < 1) {
            throw new IllegalArgumentException("a rate is more than 0 a second, and a burst at least 1");
        }
        this.perSecond = perSecond;
        this.burst = burst;
        this.nanoseconds = nanoseconds;
    }

    /**
     * Takes a token.
     *
     * @return 0 where there was one; otherwise the whole seconds after which there will be
     */
    synchronized long take(String subject) {
        long now = nanoseconds.getAsLong();
        Bucket bucket = buckets.get(subject);
        if (bucket == null) {
            bucket = new Bucket();
            bucket.tokens = burst;
            bucket.filled = now;
            buckets.put(subject, bucket);
        }
        bucket.tokens = Math.min(burst, bucket.tokens + (now - bucket.filled) / NANOSECONDS * perSecond);
        bucket.filled = now;
        if (bucket.tokens >= 1) {
            bucket.tokens--;
            return 0;
        }
        return Math.max(1, (long) Math.ceil((1 - bucket.tokens) / perSecond));
    }

    /** Subjects that are remembered. */
    synchronized int subjects() {
        return buckets.size();
    }
}
