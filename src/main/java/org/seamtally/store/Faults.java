package org.seamtally.store;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Locale;
import java.util.Set;
import org.jdbi.v3.core.ConnectionException;
import org.seamtally.kept.UnavailableException;

/** Tells what a database's fault means: ours, or that it cannot be reached or cannot write now. */
final class Faults {

    /**
     * Classes of SQL states: connection, transaction rolled back, out of resources, not in that state, stopped by its
     * operator, its own input and output.
     */
    private static final Set<String> AWAY_CLASSES = Set.of("08", "40", "53", "55", "57", "58");

    /** Of the embedded database: input or output failed, no room, closed, broken, in use elsewhere, lock not had. */
    private static final Set<String> AWAY_STATES = Set.of(
            "90007", "90020", "90028", "90031", "90067", "90097", "90098", "90100", "90121", "90131", "HYT00", "57014",
            "60000", "25006");

    private static final Set<String> FULL_STATES = Set.of("53100", "90100");

    /** Input or output failed, the store behind the tables failed, no room, closed. */
    private static final Set<String> BROKEN_STATES = Set.of("90028", "90031", "90098", "90100");

    private Faults() {}

    /** The fault as callers are to see it. */
    static RuntimeException asSeen(RuntimeException fault) {
        if (fault instanceof UnavailableException) {
            return fault;
        }
        if (isFull(fault)) {
            return new UnavailableException("The disk that things are kept on is full.", fault);
        }
        if (isAway(fault)) {
            return new UnavailableException("What is kept cannot be reached now.", fault);
        }
        return fault;
    }

    /** Whether a row with the same key is there already. */
    static boolean isDuplicate(Throwable fault) {
        return state(fault).equals("23505");
    }

    /** What was at the bottom of a fault. */
    static Throwable root(Throwable fault) {
        Throwable cause = fault;
        while (cause.getCause() != null) {
            cause = cause.getCause();
        }
        return cause;
    }

    /** Whether the embedded database could not write or read its file, after which it serves nobody. */
    static boolean brokeTheFile(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof IOException
                    || cause instanceof SQLException sql && BROKEN_STATES.contains(String.valueOf(sql.getSQLState()))) {
                return true;
            }
        }
        return false;
    }

    private static boolean isAway(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof ConnectionException || cause instanceof IOException) {
                return true;
            }
            if (cause instanceof SQLException sql) {
                String state = sql.getSQLState();
                // the pool has no state for "no connection within the time allowed"
                if (state == null
                        || AWAY_STATES.contains(state)
                        || state.length() == 5 && AWAY_CLASSES.contains(state.substring(0, 2))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isFull(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql && FULL_STATES.contains(String.valueOf(sql.getSQLState()))) {
                return true;
            }
            // the operating system's words, as the embedded database passes them on
            String words = String.valueOf(cause.getMessage()).toLowerCase(Locale.ROOT);
            if (words.contains("no space left on device") || words.contains("disk quota exceeded")) {
                return true;
            }
        }
        return false;
    }

    private static String state(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql && sql.getSQLState() != null) {
                return sql.getSQLState();
            }
        }
        return "";
    }
}
