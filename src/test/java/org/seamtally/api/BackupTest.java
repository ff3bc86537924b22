package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamtally.cli.CommandRunner;

/** The command that copies what a running service keeps. */
@QuarkusTest
class BackupTest {

    @TestHTTPResource("/")
    private URI service;

    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    private int backup(Path file, String... more) {
        String[] words = new String[more.length + 2];
        words[0] = "backup";
        words[1] = file.toString();
        System.arraycopy(more, 0, words, 2, more.length);
        return CommandRunner.run(new PrintWriter(said), words);
    }

    @Test
    void whatIsKeptIsInTheFile() throws IOException {
        Frames.request("application/x-ndjson")
                .body(Frames.line(417).getBytes(StandardCharsets.UTF_8))
                .queryParam("name", "before the backup")
                .post("/v1/batches")
                .then()
                .statusCode(202);
        Path file = folder.resolve("kept.sql.gz");
        assertEquals(0, backup(file, "--service", service.toString()));
        String text;
        try (GZIPInputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        assertTrue(text.contains("before the backup"), text);
        assertFalse(Files.exists(folder.resolve("kept.sql.gz.part")));
        // and no second time over it
        byte[] first = Files.readAllBytes(file);
        assertEquals(2, backup(file, "--service", service.toString()));
        assertEquals(-1, Arrays.mismatch(first, Files.readAllBytes(file)));
    }

    @Test
    void whatIsNoCopyLeavesNoFile() {
        Path file = folder.resolve("none");
        assertEquals(2, backup(file, "--service", "http://127.0.0.1:1"));
        assertFalse(Files.exists(file));
        assertEquals(2, backup(file, "--service", service.toString(), "--token-file", "is/not/there"));
        assertFalse(Files.exists(file));
    }
}
