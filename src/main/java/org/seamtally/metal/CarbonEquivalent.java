package org.seamtally.metal;

import java.util.List;

/**
 * One carbon equivalent of one analysis.
 *
 * @param symbol as the standards write it
 * @param value mass per cent
 * @param meantFor the range the formula is meant for, in words
 * @param outside what lies outside that range; empty where the analysis lies within
 */
public record CarbonEquivalent(String symbol, double value, String meantFor, List<String> outside) {

    /** Copies the list. */
    public CarbonEquivalent {
        outside = List.copyOf(outside);
    }

    /** Whether the analysis lies in the range the formula is meant for. */
    public boolean insideRange() {
        return outside.isEmpty();
    }
}
