package org.seamtally.load;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.Map;

/** A real PostgreSQL server that can be stopped and started again on the same data and port. */
final class PostgresServer implements AutoCloseable {

    static final String USER = "postgres";

    private final Path data;
    private final int port;
    private EmbeddedPostgres server;

    /** @param data folder for its files, made where it is not there */
    PostgresServer(Path data) throws IOException {
        this.data = data;
        try (ServerSocket socket = new ServerSocket(0)) {
            port = socket.getLocalPort();
        }
        start();
    }

    void start() throws IOException {
        server = EmbeddedPostgres.builder()
                .setPort(port)
                .setDataDirectory(data)
                .setCleanDataDirectory(false)
                .start();
    }

    void stop() throws IOException {
        server.close();
    }

    String url() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/postgres";
    }

    /** What tells a service to keep things here. */
    Map<String, String> settings() {
        return settings(port);
    }

    /** The same by another port, which leads here. */
    static Map<String, String> settings(int port) {
        return Map.of(
                "seamtally.database.url",
                "jdbc:postgresql://127.0.0.1:" + port + "/postgres",
                "seamtally.database.username",
                USER,
                "seamtally.database.password",
                USER);
    }

    int port() {
        return port;
    }

    @Override
    public void close() throws IOException {
        stop();
    }
}
