package org.seamtally.batch;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.SettledKey;

/** A key that an upload holds while its body is read. */
final class ClaimedKey {

    /** Thrice within a lease: one renewal may come late. */
    private static final Duration RENEWED_EVERY = Duration.ofSeconds(IdempotencyKeys.LEASE_SECONDS / 3);

    private final IdempotencyKeys keys;
    private final InstantSource clock;
    private final String shop;
    private final String door;
    private final String key;
    private Instant renewed;

    ClaimedKey(IdempotencyKeys keys, InstantSource clock, String shop, String door, String key) {
        this.keys = keys;
        this.clock = clock;
        this.shop = shop;
        this.door = door;
        this.key = key;
        this.renewed = clock.instant();
    }

    IdempotencyKeys.Claim claim() {
        return keys.claim(shop, door, key, renewed);
    }

    /** The upload goes on. */
    void keepAlive() {
        Instant now = clock.instant();
        if (Duration.between(renewed, now).compareTo(RENEWED_EVERY) >= 0) {
            keys.renew(shop, door, key, now);
            renewed = now;
        }
    }

    void release() {
        keys.release(shop, door, key);
    }

    SettledKey settled(String digest, byte[] answer) {
        return new SettledKey(shop, door, key, digest, answer);
    }
}
