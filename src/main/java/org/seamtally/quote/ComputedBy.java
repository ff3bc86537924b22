package org.seamtally.quote;

/**
 * The engine that worked out an estimate.
 *
 * @param version of the program
 * @param catalogue digest of the reference data
 */
public record ComputedBy(String version, String catalogue) {}
