package org.seamtally.api;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;

/** What the service logs as an error while it is watched. */
final class Logged extends Handler implements AutoCloseable {

    private final List<String> errors = new CopyOnWriteArrayList<>();

    Logged() {
        Logger.getLogger("").addHandler(this);
    }

    List<String> errors() {
        return errors;
    }

    @Override
    public void publish(LogRecord entry) {
        if (entry.getLevel().intValue() >= Level.SEVERE.intValue()) {
            errors.add(entry.getLoggerName() + ": " + entry.getMessage() + " " + entry.getThrown());
        }
    }

    @Override
    public void flush() {}

    @Override
    public void close() {
        Logger.getLogger("").removeHandler(this);
    }
}
