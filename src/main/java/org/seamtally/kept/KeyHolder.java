package org.seamtally.kept;

import java.util.UUID;

/**
 * A request that holds a key, or would like to.
 *
 * @param door the endpoint: one key at two endpoints is two keys
 * @param key the client's
 * @param claimant the request's own id, which no other request has: two with one key are told apart by it
 */
public record KeyHolder(String shop, String door, String key, UUID claimant) {

    /** The key with what came of the request. */
    public SettledKey settled(String digest, byte[] answer) {
        return new SettledKey(shop, door, key, digest, answer);
    }
}
