package org.seamtally.page;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import org.seamtally.wire.FrameEstimateAnswer;

/**
 * A quote to be printed. It is printed in the units of its answer.
 *
 * @param number what the shop calls the quote
 * @param revision from 1 on
 * @param date when this revision was made
 * @param customerReference whom or what the quote is for, in the customer's words
 * @param validUntil the last day on which the price stands
 * @param notes for the customer
 * @param letterhead the shop's name and address, in lines
 * @param answer what was estimated
 */
public record PrintedQuote(
        String number,
        int revision,
        LocalDate date,
        Optional<String> customerReference,
        Optional<LocalDate> validUntil,
        Optional<String> notes,
        Optional<String> letterhead,
        FrameEstimateAnswer answer) {

    /** @throws NullPointerException where a part is missing */
    public PrintedQuote {
        Objects.requireNonNull(number, "the number");
        Objects.requireNonNull(date, "the date");
        Objects.requireNonNull(customerReference, "the customer's reference");
        Objects.requireNonNull(validUntil, "the validity");
        Objects.requireNonNull(notes, "the notes");
        Objects.requireNonNull(letterhead, "the letterhead");
        Objects.requireNonNull(answer, "the answer");
    }
}
