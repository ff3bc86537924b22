package org.seamtally.kept;

/** A key was settled by another request since it was claimed: what came with it was not kept. */
public final class KeyTakenException extends RuntimeException {

    private static final long serialVersionUID = 1;

    /** @param key the client's */
    public KeyTakenException(String key) {
        super("the key " + key + " was settled by another request meanwhile", null, false, false);
    }
}
