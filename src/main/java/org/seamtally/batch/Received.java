package org.seamtally.batch;

import java.util.UUID;

/** What came of an upload that was not refused. */
public sealed interface Received {

    /**
     * It is kept.
     *
     * @param answer a {@link org.seamtally.wire.BatchAnswer} as JSON
     */
    record Accepted(byte[] answer, UUID id) implements Received {}

    /**
     * Its key was used for the same upload before.
     *
     * @param answer the one given then
     */
    record Replayed(byte[] answer) implements Received {}

    /** An upload with its key is under way. */
    record InFlight() implements Received {}

    /** Its key was used for another upload. */
    record OtherBody() implements Received {}
}
