package org.seamtally.kept;

/**
 * A key and what it was used for.
 *
 * @param door the endpoint
 * @param digest of the request, SHA-256, hexadecimal
 * @param answer body of the answer that was given, and is given again
 */
public record SettledKey(String shop, String door, String key, String digest, byte[] answer) {}
