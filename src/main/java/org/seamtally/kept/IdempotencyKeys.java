package org.seamtally.kept;

import java.time.Instant;

/**
 * Keys that clients send so that a request counts once, however often it is sent (the Idempotency-Key header of an IETF
 * draft). A key is claimed before anything is kept, and settled in the transaction that keeps what was asked for.
 *
 * <p>Each method throws {@link UnavailableException} where what is kept cannot be reached.
 */
public interface IdempotencyKeys {

    /**
     * Claims a key, in a short transaction of its own.
     *
     * @param door the endpoint: one key at two endpoints is two keys
     * @param now when; a claim that was neither settled nor renewed for {@link #LEASE_SECONDS} may be claimed anew
     */
    Claim claim(String shop, String door, String key, Instant now);

    /** Keeps a claim alive while a long body is read. */
    void renew(String shop, String door, String key, Instant now);

    /** Gives a claim back: the request was refused, or broke off. */
    void release(String shop, String door, String key);

    /** A claim that nobody renews for so long belongs to a process that died. */
    long LEASE_SECONDS = 60;

    /** What came of a claim. */
    sealed interface Claim {

        /** The key is the caller's. */
        record Granted() implements Claim {}

        /** Another request with the key is under way. */
        record InFlight() implements Claim {}

        /** A request with the key was carried out. */
        record Settled(SettledKey use) implements Claim {}
    }
}
