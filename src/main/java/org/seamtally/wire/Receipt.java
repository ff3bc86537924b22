package org.seamtally.wire;

import java.util.UUID;

/** What came of a quote, or of a revision of one, that was to be kept. */
public sealed interface Receipt {

    /**
     * It is kept, now or since an earlier request with the same key.
     *
     * @param answer the body: a {@link QuoteAnswer}
     * @param replayed whether it was kept by an earlier request
     */
    record Kept(UUID quote, int revision, byte[] answer, boolean replayed) implements Receipt {}

    /** Another request with the key is under way. */
    record InFlight() implements Receipt {}

    /** The key was used for another request. */
    record OtherRequest() implements Receipt {}

    /** There is no such quote. */
    record Unknown() implements Receipt {}

    /** It was made from a revision that is not the latest. */
    record Stale(int latest) implements Receipt {}
}
