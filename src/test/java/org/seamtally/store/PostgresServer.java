package org.seamtally.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.UUID;
import javax.sql.DataSource;

/** A real server, started once for all tests of a run and stopped at its end; a database each for those that ask. */
final class PostgresServer {

    private static final EmbeddedPostgres SERVER = start();

    private PostgresServer() {}

    private static EmbeddedPostgres start() {
        try {
            EmbeddedPostgres server = EmbeddedPostgres.builder().start();
            Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(server)));
            return server;
        } catch (IOException e) {
            throw new UncheckedIOException("no PostgreSQL to test with", e);
        }
    }

    private static void stop(EmbeddedPostgres server) {
        try {
            server.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** An empty database. */
    static DataSource fresh() {
        String name = "kept_" + UUID.randomUUID().toString().replace("-", "");
        try (var connection = SERVER.getPostgresDatabase().getConnection();
                var statement = connection.createStatement()) {
            statement.execute("create database " + name);
        } catch (java.sql.SQLException e) {
            throw new IllegalStateException(e);
        }
        return SERVER.getDatabase("postgres", name);
    }
}
