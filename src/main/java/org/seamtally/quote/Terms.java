package org.seamtally.quote;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What a quote says besides the estimate.
 *
 * @param customerReference what the customer calls the inquiry
 * @param validUntil the last day on which the price holds; empty: the quote does not say
 * @param notes of the shop's own
 */
public record Terms(Optional<String> customerReference, Optional<LocalDate> validUntil, Optional<String> notes) {}
