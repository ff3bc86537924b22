package org.seamtally.store;

import java.util.Locale;
import java.util.Map;

/** The databases that things are kept in, and all that differs between them. */
public enum Dialect {
    /** A file on this machine, which one process alone opens. */
    H2("h2", "blob"),
    /** A server that several replicas share. */
    POSTGRESQL("pg", "bytea");

    private final String dataSource;
    private final String bytes;

    Dialect(String dataSource, String bytes) {
        this.dataSource = dataSource;
        this.bytes = bytes;
    }

    /** The database that a URL names. */
    static Dialect of(String url) {
        String start = url.strip().toLowerCase(Locale.ROOT);
        if (start.startsWith("jdbc:h2:")) {
            return H2;
        }
        if (start.startsWith("jdbc:postgresql:")) {
            return POSTGRESQL;
        }
        throw new IllegalArgumentException("seamtally.database.url is " + url
                + ": it takes jdbc:h2:file:PATH or jdbc:postgresql://HOST:PORT/NAME.");
    }

    /** Name of its data source in the framework's settings. */
    String dataSource() {
        return dataSource;
    }

    /** Whether one process alone has it open, so that whatever another has left under way is nobody's. */
    boolean ofOneProcess() {
        return this == H2;
    }

    /** Words that migrations leave open. */
    Map<String, String> placeholders() {
        return Map.of("bytes", bytes);
    }
}
