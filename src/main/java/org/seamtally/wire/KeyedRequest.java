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
import org.seamtally.kept.KeyTakenException;
import org.seamtally.kept.SettledKey;
import org.seamtally.kept.UnavailableException;
import org.seamtally.quantity.UnitSystem;

/** A request for a quote that counts once, however often it is sent with its key; without a key it counts each time. */
final class KeyedRequest {

    private final IdempotencyKeys keys;
    private final InstantSource clock;
    private final String shop;
    private final String door;
    private final String key;
    private final String digest;

    private KeyedRequest(
            IdempotencyKeys keys, InstantSource clock, String shop, String door, String key, String digest) {
        this.keys = keys;
        this.clock = clock;
        this.shop = shop;
        this.door = door;
        this.key = key;
        this.digest = digest;
    }

    /** @param key null where none was sent */
    static KeyedRequest of(
            IdempotencyKeys keys,
            InstantSource clock,
            String shop,
            String door,
            String key,
            UnitSystem units,
            byte[] body) {
        return new KeyedRequest(keys, clock, shop, door, key, digest(units, body));
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
        if (key == null) {
            return work.done(answer -> null);
        }
        Claim claim = keys.claim(shop, door, key, clock.instant());
        if (claim instanceof Claim.InFlight) {
            return new Receipt.InFlight();
        }
        return claim instanceof Claim.Settled settled ? again(settled.use()) : claimed(work);
    }

    private Receipt claimed(Work work) throws IOException, RefusedException {
        boolean kept = false;
        try {
            Receipt receipt = work.done(answer -> new SettledKey(shop, door, key, digest, answer));
            kept = receipt instanceof Receipt.Kept;
            return receipt;
        } catch (KeyTakenException e) {
            // it took so long that the claim ran out, and another request with the key was quicker: its answer counts
            kept = true;
            return keys.claim(shop, door, key, clock.instant()) instanceof Claim.Settled settled
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
            keys.release(shop, door, key);
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
                use.answer());
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
