package org.seamtally.frame;

/**
 * Something in what was given that cannot be worked with.
 *
 * @param path of the field
 * @param key a stable word
 * @param message plain words that say what is taken
 */
public record Problem(String path, String key, String message) {}
