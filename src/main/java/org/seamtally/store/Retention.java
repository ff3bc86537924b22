package org.seamtally.store;

import java.time.Duration;
import java.util.Optional;

/**
 * How long what is kept stays by itself.
 *
 * @param batches since they ended; empty where they stay until somebody removes them
 * @param keys since they were used: a request that is sent again later counts as a new one
 */
public record Retention(Optional<Duration> batches, Duration keys) {

    /** Who sends a job file at night is to find its results in the morning, and to have the day to fetch them. */
    public static final Duration LEAST_OF_BATCHES = Duration.ofDays(1);

    /** Software that sends once a day sends again within a day where it had no answer. */
    public static final Duration LEAST_OF_KEYS = Duration.ofDays(1);

    public Retention {
        batches.ifPresent(given -> check("seamtally.retention.batches", given, LEAST_OF_BATCHES));
        check("seamtally.retention.keys", keys, LEAST_OF_KEYS);
    }

    private static void check(String setting, Duration given, Duration least) {
        if (given.compareTo(least) < 0) {
            throw new IllegalArgumentException(
                    setting + " is " + given + ": it takes " + least.toHours() + "h or more, such as 30d.");
        }
    }
}
