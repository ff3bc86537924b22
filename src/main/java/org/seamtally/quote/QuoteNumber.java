package org.seamtally.quote;

import java.util.Locale;

/**
 * A quote's number, as it is said on the telephone: running within a shop, with gaps.
 *
 * @param value 1 or more
 */
public record QuoteNumber(long value) {

    /** @throws IllegalArgumentException where it is not 1 or more */
    public QuoteNumber {
        if (value < 1) {
            throw new IllegalArgumentException("quotes are numbered from 1, not " + value);
        }
    }

    /** As it is written: {@code Q-000123}. */
    public String text() {
        return String.format(Locale.ROOT, "Q-%06d", value);
    }
}
