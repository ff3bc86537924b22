package org.seamtally.batch;

import java.time.Duration;
import java.time.InstantSource;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.SettledKey;

/** A key that an upload holds while its body is read. */
final class ClaimedKey {

    /** Thrice within a lease: one renewal may come late. */
    private static final Duration RENEWED_EVERY = Duration.ofSeconds(IdempotencyKeys.LEASE_SECONDS / 3);

    private final IdempotencyKeys keys;
    private final InstantSource clock;
    private final KeyHolder holder;

    ClaimedKey(IdempotencyKeys keys, InstantSource clock, KeyHolder holder) {
        this.keys = keys;
        this.clock = clock;
        this.holder = holder;
    }

    IdempotencyKeys.Claim claim() {
        return keys.claim(holder, clock.instant());
    }

    /** What keeps the claim as long as the upload goes on. */
    Pulse pulse() {
        return new Pulse(clock, RENEWED_EVERY, now -> keys.renew(holder, now));
    }

    void release() {
        keys.release(holder);
    }

    SettledKey settled(String digest, byte[] answer) {
        return holder.settled(digest, answer);
    }
}
