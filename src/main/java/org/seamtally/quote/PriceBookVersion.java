package org.seamtally.quote;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A price book as it stands from a day on.
 *
 * @param number 1, 2, 3 in the order they were made
 * @param effective the day from which on it is used; days are those of UTC
 * @param note of the shop's own
 * @param prices as they were sent: JSON in UTF-8
 * @param made when it was made
 */
public record PriceBookVersion(
        PriceBookName book, int number, LocalDate effective, Optional<String> note, byte[] prices, Instant made) {

    /** @throws IllegalArgumentException where the number is not 1 or more */
    public PriceBookVersion {
        if (number < 1) {
            throw new IllegalArgumentException("versions are numbered from 1, not " + number);
        }
    }
}
