package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.ChunkResult;
import org.seamtally.batch.Counts;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatches.ChunkName;
import org.seamtally.batch.KeptBatches.Sealed;
import org.seamtally.kept.KeyHolder;
import org.seamtally.kept.UnavailableException;

/** A server that is stopped and started again: nothing acknowledged is lost, and what waited goes on. */
class DatabaseAwayTest {

    private static final InstantSource CLOCK = InstantSource.system();
    private static final Retention RETENTION = new Retention(Optional.empty(), Duration.ofDays(4));

    @TempDir
    Path folder;

    private EmbeddedPostgres server(int port) throws IOException {
        return EmbeddedPostgres.builder()
                .setPort(port)
                .setDataDirectory(folder.resolve("data"))
                .setCleanDataDirectory(false)
                .start();
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    @Test
    void aBatchGoesOnWhereItStoodWhenTheServerIsBack() throws Exception {
        int port = freePort();
        EmbeddedPostgres first = server(port);
        DataSource source = first.getDatabase("postgres", "postgres", Map.of("connectTimeout", "2"));
        Sql sql = new Sql(source, Dialect.POSTGRESQL);
        SqlBatches batches = new SqlBatches(sql, CLOCK);
        CountDownLatch someDone = new CountDownLatch(3);
        CountDownLatch stopped = new CountDownLatch(1);
        ChunkTasks[] tasks = new ChunkTasks[1];
        try (Housekeeping housekeeping = new Housekeeping(
                sql,
                batches,
                new SqlKeys(sql),
                RETENTION,
                () -> {
                    tasks[0] = new ChunkTasks(
                            sql, "engine", chunk -> work(batches, chunk, someDone, stopped), 2, "replica", CLOCK);
                    tasks[0].start();
                },
                CLOCK)) {
            housekeeping.start();
            ChunkTasksTest.await("tables", () -> ready(sql));
            UUID batch = sealed(batches, 12);
            ChunkTasksTest.pass(someDone);

            first.close();
            assertThrows(UnavailableException.class, () -> batches.find("shop", batch));
            assertThrows(
                    UnavailableException.class,
                    () -> new SqlKeys(sql).claim(new KeyHolder("shop", "d", "k", UUID.randomUUID()), CLOCK.instant()));
            stopped.countDown();

            try (EmbeddedPostgres second = server(port)) {
                assertEquals(port, second.getPort());
                ChunkTasksTest.await(
                        "the batch's end",
                        () -> batches.find("shop", batch).orElseThrow().chunksDone() == 12);
                assertEquals(
                        new Counts(12, 12, 0),
                        batches.find("shop", batch).orElseThrow().counts());
                tasks[0].close();
            }
        } finally {
            first.close();
        }
    }

    @Test
    void aServiceThatIsThereBeforeItsDatabaseTakesBatchesOnceItCan() throws Exception {
        int port = freePort();
        org.postgresql.ds.PGSimpleDataSource source = new org.postgresql.ds.PGSimpleDataSource();
        source.setURL("jdbc:postgresql://127.0.0.1:" + port + "/postgres?user=postgres&connectTimeout=2");
        Sql sql = new Sql(source, Dialect.POSTGRESQL);
        SqlBatches batches = new SqlBatches(sql, CLOCK);
        try (Housekeeping housekeeping = new Housekeeping(sql, batches, new SqlKeys(sql), RETENTION, () -> {}, CLOCK)) {
            housekeeping.start();
            assertThrows(UnavailableException.class, () -> batches.list("shop", 10, null));
            try (EmbeddedPostgres late = server(port)) {
                assertEquals(port, late.getPort());
                ChunkTasksTest.await("tables", () -> ready(sql));
                UUID batch = sealed(batches, 2);
                assertTrue(batches.find("shop", batch).isPresent());
            }
        }
    }

    private static boolean ready(Sql sql) {
        try {
            return sql.in(handle -> true);
        } catch (UnavailableException e) {
            return false;
        }
    }

    private static boolean work(SqlBatches batches, ChunkName chunk, CountDownLatch someDone, CountDownLatch stopped) {
        if (someDone.getCount() == 0) {
            // under way while the server stops
            ChunkTasksTest.pass(stopped);
        }
        boolean kept = batches.finish(
                chunk.batch(),
                chunk.number(),
                new ChunkResult(new Counts(1, 1, 0), new byte[0], new byte[0], new byte[0]),
                CLOCK.instant());
        someDone.countDown();
        return kept;
    }

    private static UUID sealed(SqlBatches batches, int chunks) {
        BatchPlan plan =
                new BatchPlan(UUID.randomUUID(), "shop", "engine", "si", Form.CSV, CLOCK.instant(), Optional.empty());
        batches.begin(plan);
        for (int chunk = 0; chunk < chunks; chunk++) {
            batches.add("shop", plan.id(), chunk, new Chunk(1, new byte[] {1}));
        }
        batches.seal("shop", plan.id(), new Sealed(chunks, chunks, "00", CLOCK.instant()), null);
        return plan.id();
    }
}
