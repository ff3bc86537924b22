package org.seamtally.kept;

import java.time.Instant;

/**
 * Keys that clients send so that a request counts once, however often it is sent (the Idempotency-Key header of an IETF
 * draft). A key is claimed before anything is kept, and settled in the transaction that keeps what was asked for. A claim
 * that runs out may be taken over; from then on whoever had it can neither renew it nor give it back. Of two that work under
 * one key for that reason, the one that settles it first counts.
 *
 * <p>Each method throws {@link UnavailableException} where what is kept cannot be reached.
 */
public interface IdempotencyKeys {

    /**
     * Claims a key, in a short transaction of its own.
     *
     * @param now when; a claim that was neither settled nor renewed for {@link #LEASE_SECONDS} may be claimed anew
     */
    Claim claim(KeyHolder holder, Instant now);

    /** Keeps a claim alive while a long body is read; nothing where it is another's by now. */
    void renew(KeyHolder holder, Instant now);

    /** Gives a claim back: the request was refused, or broke off. Nothing where it is another's by now, or is settled. */
    void release(KeyHolder holder);

    /** Forgets keys that were last claimed, renewed or settled before then, a few at a time; how many. */
    int forget(Instant before);

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
