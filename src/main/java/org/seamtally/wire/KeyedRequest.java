package org.seamtally.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.InstantSource;
import java.util.HexFormat;
import java.util.UUID;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.IdempotencyKeys.Claim;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;
import org.seamtally.quantity.UnitSystem;

/**
 * A request for a quote that counts once, however often it is sent with its key; without a key it counts each time.
 *
 * <p>Its claim is never renewed: the body is read before it is claimed, and to estimate and keep one quote takes seconds.
 * Should it take longer than the lease, a second request with the key may be worked out beside it; whichever is kept first is
 * what both are answered.
 */
final class KeyedRequest {

    private final IdempotencyKeys keys;
    private final InstantSource clock;
    private final KeyHolder holder;
    private final String digest;

    /** @param holder its key null where none was sent */
    KeyedRequest(IdempotencyKeys keys, InstantSource clock, KeyHolder holder, UnitSystem units, byte[] body) {
        this.keys = keys;
        this.clock = clock;
        this.holder = holder;
        this.digest = digest(units, body);
    }

    /** What settles the key, if there is one. */
    interface Settling {
        /** @return null where no key was sent */
        SettledKey by(byte[] answer);
    }

    /** What is to be done once. */
    interface Work {
        Receipt done(Settling settling) throws IOException, RefusedException;
    }

    Receipt once(Work work) throws IOException, RefusedException {
        if (holder.key() == null) {
            return work.done(answer -> null);
        }
        Claim claim = keys.claim(holder, clock.instant());
        if (claim instanceof Claim.InFlight) {
            return new Receipt.InFlight();
        }
        return claim instanceof Claim.Settled settled ? again(settled.use()) : claimed(work);
    }

    private Receipt claimed(Work work) throws IOException, RefusedException {
        boolean kept = false;
        try {
            Receipt receipt = work.done(answer -> holder.settled(digest, answer));
            kept = receipt instanceof Receipt.Kept;
            return receipt;
        } catch (KeyTakenException e) {
            // it took so long that the claim ran out, and another request with the key was quicker: its answer counts
            return keys.claim(holder, clock.instant()) instanceof Claim.Settled settled
                    ? again(settled.use())
                    : new Receipt.InFlight();
        } finally {
            if (!kept) {
                release();
            }
        }
    }

    /** A claim that cannot be given back runs out by itself; what went wrong is told by what brought us here. */
    private void release() {
        try {
            keys.release(holder);
        } catch (UnavailableException e) {
            return;
        }
    }

    private Receipt again(SettledKey use) throws IOException {
        if (!use.digest().equals(digest)) {
            return new Receipt.OtherRequest();
        }
        JsonNode answer = Json.mapper().readTree(use.answer());
        return new Receipt.Kept(
                UUID.fromString(answer.path("id").asText()),
                answer.path("revision").asInt(),
                use.answer(),
                true);
    }

    private static String digest(UnitSystem units, byte[] body) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            sha.update((units.word() + "\n").getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sha.digest(body));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
