package org.seamtally.quote;

import java.time.LocalDate;

/**
 * The version of a price book that a quote was priced by.
 *
 * @param effective the day from which on it was used
 */
public record PricedBy(PriceBookName book, int version, LocalDate effective) {}
