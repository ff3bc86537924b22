package org.seamtally.api;

/** There is nothing more to be sent, now or later: a listener is told to stop asking. */
final class NothingMoreException extends RuntimeException {

    private static final long serialVersionUID = 1;

    NothingMoreException() {
        super(null, null, false, false);
    }
}
