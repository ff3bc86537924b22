package org.seamtally.api;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.jboss.logmanager.ExtLogRecord;

/** What is logged under a category while it is watched, faults included. */
final class LogLines extends Handler implements AutoCloseable {

    private final List<String> lines = new CopyOnWriteArrayList<>();
    private final Logger logger;

    private LogLines(Logger logger) {
        this.logger = logger;
        logger.addHandler(this);
    }

    /** @param category empty for all */
    static LogLines of(String category) {
        return new LogLines(Logger.getLogger(category));
    }

    List<String> lines() {
        return lines;
    }

    @Override
    public void publish(LogRecord entry) {
        String message = entry instanceof ExtLogRecord extended ? extended.getFormattedMessage() : entry.getMessage();
        StringBuilder line = new StringBuilder(message);
        for (Throwable fault = entry.getThrown(); fault != null; fault = fault.getCause()) {
            line.append(' ').append(fault);
        }
        lines.add(line.toString());
    }

    @Override
    public void flush() {}

    @Override
    public void close() {
        logger.removeHandler(this);
    }
}
