package org.seamtally.store;

import java.util.Locale;

/**
 * Where things are kept, as configured.
 *
 * @param dialect the database that it names
 * @param complete the URL with what the service needs besides
 */
record DatabaseUrl(Dialect dialect, String complete) {

    /**
     * Reads a URL.
     *
     * @throws IllegalArgumentException where it names another database, or asks for what the service must not do
     */
    static DatabaseUrl of(String given) {
        String url = given.strip();
        Dialect dialect = Dialect.of(url);
        return new DatabaseUrl(dialect, dialect == Dialect.H2 ? embedded(url) : url);
    }

    private static String embedded(String url) {
        String upper = url.toUpperCase(Locale.ROOT);
        boolean memory = upper.startsWith("JDBC:H2:MEM:");
        if (!memory && !upper.startsWith("JDBC:H2:FILE:")) {
            throw refused(url, "of this database it takes jdbc:h2:file:PATH");
        }
        // would listen on all interfaces
        if (upper.contains(";AUTO_SERVER=TRUE")) {
            throw refused(url, "AUTO_SERVER would open it to the network; several replicas share jdbc:postgresql://…");
        }
        if (upper.contains(";MODE=")) {
            throw refused(url, "the database's own mode is the only one that works");
        }
        StringBuilder complete = new StringBuilder(url);
        // each commit reaches the file before it is acknowledged
        add(complete, upper, "WRITE_DELAY", "0");
        // the pool closes it in its own time, after what is under way
        add(complete, upper, "DB_CLOSE_ON_EXIT", "FALSE");
        // KiB; its own choice is 64 MiB, a quarter of a small heap, and rows are read once
        add(complete, upper, "CACHE_SIZE", "8192");
        if (memory) {
            // stays while the process does
            add(complete, upper, "DB_CLOSE_DELAY", "-1");
        }
        return complete.toString();
    }

    private static void add(StringBuilder url, String given, String setting, String value) {
        if (!given.contains(";" + setting + "=")) {
            url.append(';').append(setting).append('=').append(value);
        }
    }

    private static IllegalArgumentException refused(String url, String because) {
        return new IllegalArgumentException("seamtally.database.url is " + url + ": " + because + ".");
    }
}
