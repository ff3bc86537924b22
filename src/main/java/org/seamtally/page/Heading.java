package org.seamtally.page;

import org.seamtally.wire.FrameEstimateAnswer;

/**
 * What stands at the head and foot of every printed form.
 *
 * @param number of the quote
 * @param revision of it
 * @param date of the revision
 * @param frame what the frame is called
 * @param order how many frames
 * @param reference the customer's; empty where there is none
 * @param engine what computed it
 */
record Heading(String number, int revision, String date, String frame, String order, String reference, String engine) {

    static Heading of(PrintedQuote quote) {
        FrameEstimateAnswer answer = quote.answer();
        return new Heading(
                quote.number(),
                quote.revision(),
                Wording.day(quote.date()),
                answer.name() == null ? "Tube frame" : answer.name(),
                Wording.frames(answer.quantity()),
                quote.customerReference().orElse(""),
                "seamtally " + answer.engine().version() + ", catalogue "
                        + answer.engine().catalogue());
    }
}
