package org.seamtally.cli;

/** Why a batch is not begun, or not gone on with, in words for whoever started it. */
final class NotBegunException extends Exception {

    private static final long serialVersionUID = 1;

    NotBegunException(String why) {
        super(why, null, false, false);
    }
}
