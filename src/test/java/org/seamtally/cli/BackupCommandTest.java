package org.seamtally.cli;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.UUID;
import java.util.zip.ZipFile;
import org.h2.jdbcx.JdbcConnectionPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamtally.quote.PriceBookName;
import org.seamtally.store.Dialect;
import org.seamtally.store.Sql;
import org.seamtally.store.SqlPriceBooks;

/** The command fetches a copy from a running service; unzipped into a new folder it is what was kept. */
@QuarkusTest
@TestProfile(BackupCommandTest.OnAFile.class)
class BackupCommandTest {

    public static final class OnAFile implements QuarkusTestProfile {

        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("seamtally.database.url", "jdbc:h2:file:./target/kept/" + UUID.randomUUID());
        }
    }

    private static final String BOOK = "{\"effective\": \"2026-01-01\", \"prices\": {\"currency\": \"USD\","
            + " \"labour\": \"65.00/h\", \"filler\": \"12.50/lb\", \"gas\": \"0.35/ft3\"}}";

    @TempDir
    Path folder;

    private final StringWriter told = new StringWriter();

    private int backup(Path to, int port) {
        return Main.commands()
                .setErr(new PrintWriter(told))
                .execute("backup", "--to", to.toString(), "--service", "http://127.0.0.1:" + port);
    }

    @Test
    void theCopyIsWhatWasKept() throws IOException {
        assertEquals(
                201,
                given().contentType("application/json")
                        .body(BOOK)
                        .put("/v1/price-books/Copied")
                        .statusCode());
        Path zip = folder.resolve("kept.zip");
        assertEquals(0, backup(zip, RestAssured.port), told::toString);
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(zip)));

        Path restored = folder.resolve("restored");
        Files.createDirectories(restored);
        String database;
        try (ZipFile copy = new ZipFile(zip.toFile())) {
            var entry = copy.stream().findFirst().orElseThrow();
            Files.copy(copy.getInputStream(entry), restored.resolve(entry.getName()));
            database = entry.getName().replace(".mv.db", "");
        }
        Sql sql =
                new Sql(JdbcConnectionPool.create("jdbc:h2:file:" + restored.resolve(database), "sa", ""), Dialect.H2);
        sql.migrate();
        assertEquals(
                1,
                new SqlPriceBooks(sql)
                        .find("local", new PriceBookName("Copied"))
                        .orElseThrow()
                        .latest()
                        .number());
    }

    @Test
    void aFileThatIsThereIsNotWrittenOver() throws IOException {
        Path there = folder.resolve("there.zip");
        Files.writeString(there, "kept");
        assertEquals(2, backup(there, RestAssured.port));
        assertEquals("kept", Files.readString(there));
        assertTrue(told.toString().contains("there.zip"), told::toString);
    }

    @Test
    void whereNoServiceAnswersThereIsNoFile() throws IOException {
        int nobody;
        try (ServerSocket socket = new ServerSocket(0)) {
            nobody = socket.getLocalPort();
        }
        Path none = folder.resolve("none.zip");
        assertEquals(2, backup(none, nobody));
        assertFalse(Files.exists(none));
        assertTrue(told.toString().contains("127.0.0.1:" + nobody), told::toString);
    }
}
