package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.h2.jdbcx.JdbcConnectionPool;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamtally.quote.PriceBook;
import org.seamtally.quote.PriceBookName;
import org.seamtally.quote.PriceBookVersion;

/** A copy made amid writes, restored into a new folder: all that was acknowledged before is in it, whole and in order. */
class BackupTest {

    private static final int BOOKS = 3;
    private static final int BACKUPS = 5;
    private static final int VERSIONS_BETWEEN = 10;
    private static final Instant MADE = Instant.parse("2026-11-25T10:00:00Z");
    // of a length that takes several pages of the file
    private static final int LENGTH = 20_000;

    @TempDir
    Path folder;

    private final AtomicBoolean stopped = new AtomicBoolean();
    private final AtomicIntegerArray acknowledged = new AtomicIntegerArray(BOOKS);

    @Test
    void whatWasAcknowledgedBeforeIsInTheCopy() throws Exception {
        Sql sql = Databases.migrated(Databases.h2File("target/kept/" + UUID.randomUUID()), Dialect.H2);
        SqlPriceBooks books = new SqlPriceBooks(sql);
        Backup backup = new Backup(sql);
        ExecutorService writers = Executors.newFixedThreadPool(BOOKS);
        List<Future<Void>> ends = new ArrayList<>();
        try {
            for (int book = 0; book < BOOKS; book++) {
                int number = book;
                ends.add(writers.submit(() -> write(books, number)));
            }
            for (int i = 0; i < BACKUPS; i++) {
                int enough = acknowledged.get(0) + VERSIONS_BETWEEN;
                ChunkTasksTest.await("more versions", () -> acknowledged.get(0) >= enough);
                int[] before = new int[BOOKS];
                for (int book = 0; book < BOOKS; book++) {
                    before[book] = acknowledged.get(book);
                }
                Path zip = folder.resolve("backup-" + i + ".zip");
                assertTrue(backup.writeTo(zip));
                check(restored(zip, folder.resolve("restored-" + i)), before);
            }
        } finally {
            stopped.set(true);
            for (Future<Void> end : ends) {
                end.get(1, TimeUnit.MINUTES);
            }
            writers.shutdown();
        }
    }

    @Test
    void whatIsInNoFileOfTheServiceIsNotCopied() {
        JdbcConnectionPool memory =
                JdbcConnectionPool.create("jdbc:h2:mem:" + UUID.randomUUID() + ";DB_CLOSE_DELAY=-1", "sa", "");
        assertFalse(new Backup(Databases.migrated(memory, Dialect.H2)).writeTo(folder.resolve("memory.zip")));
        assertFalse(new Backup(Databases.postgres()).writeTo(folder.resolve("server.zip")));
    }

    private Void write(SqlPriceBooks books, int book) {
        for (int number = 1; !stopped.get(); number++) {
            assertTrue(books.add("shop", version(book, number)));
            acknowledged.set(book, number);
        }
        return null;
    }

    private static PriceBookVersion version(int book, int number) {
        byte[] prices = new byte[LENGTH];
        new Random(1_000L * book + number).nextBytes(prices);
        return new PriceBookVersion(
                new PriceBookName("Book " + book),
                number,
                LocalDate.EPOCH,
                Optional.of("version " + number),
                prices,
                MADE);
    }

    private static void check(SqlPriceBooks restored, int[] before) {
        for (int book = 0; book < BOOKS; book++) {
            PriceBook found =
                    restored.find("shop", new PriceBookName("Book " + book)).orElseThrow();
            assertTrue(found.latest().number() >= before[book], "an acknowledged version is missing");
            for (int number = 1; number <= found.latest().number(); number++) {
                PriceBookVersion version = found.versions().get(number - 1);
                assertEquals(number, version.number());
                assertEquals(Optional.of("version " + number), version.note());
                assertArrayEquals(version(book, number).prices(), version.prices());
            }
        }
    }

    private static SqlPriceBooks restored(Path zip, Path into) throws IOException {
        Files.createDirectories(into);
        String database = null;
        try (InputStream file = Files.newInputStream(zip);
                ZipInputStream entries = new ZipInputStream(file)) {
            for (ZipEntry entry = entries.getNextEntry(); entry != null; entry = entries.getNextEntry()) {
                Files.copy(entries, into.resolve(entry.getName()));
                database = entry.getName().replace(".mv.db", "");
            }
        }
        JdbcConnectionPool source = JdbcConnectionPool.create(
                DatabaseUrl.of("jdbc:h2:file:" + into.resolve(database).toAbsolutePath())
                        .complete(),
                "sa",
                "");
        return new SqlPriceBooks(Databases.migrated(source, Dialect.H2));
    }
}
