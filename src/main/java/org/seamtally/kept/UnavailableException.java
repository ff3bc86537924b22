package org.seamtally.kept;

/** What is kept cannot be reached now. */
public final class UnavailableException extends RuntimeException {

    private static final long serialVersionUID = 1;

    /** @param message in plain words, fit for a client */
    public UnavailableException(String message, Throwable cause) {
        super(message, cause);
    }
}
