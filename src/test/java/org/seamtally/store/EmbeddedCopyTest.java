package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatches.Sealed;

/** A copy of the embedded database that is taken while it is written to, and a new one made from it. */
class EmbeddedCopyTest {

    private static final InstantSource CLOCK = InstantSource.system();

    @TempDir
    private Path folder;

    private Path copied(Sql sql) throws IOException {
        Path copy = folder.resolve("copy");
        try (OutputStream out = Files.newOutputStream(copy)) {
            new EmbeddedCopy(sql).writeTo(out);
        }
        return copy;
    }

    private static DataSource fresh() {
        return Databases.h2File("target/kept/" + UUID.randomUUID());
    }

    @Test
    void whatWasKeptIsKeptInTheDatabaseMadeFromIt() throws IOException {
        Sql sql = Databases.h2();
        SqlBatches batches = new SqlBatches(sql, CLOCK);
        BatchPlan plan = new BatchPlan(
                UUID.randomUUID(), "shop", "engine", "si", Form.CSV, CLOCK.instant(), Optional.of("Tür '1'"));
        // longer than what the database keeps within a row
        byte[] bytes = new byte[700_000];
        new Random(7).nextBytes(bytes);
        batches.begin(plan);
        batches.add("shop", plan.id(), 0, new Chunk(1, bytes));
        batches.seal("shop", plan.id(), new Sealed(1, 1, "00", CLOCK.instant()), null);

        Path copy = copied(sql);
        Sql other = new Sql(fresh(), Dialect.H2);
        other.restore(copy);
        // a copy of an older version would be brought up to date here
        other.migrate();

        SqlBatches restored = new SqlBatches(other, CLOCK);
        assertArrayEquals(bytes, restored.chunk(plan.id(), 0).orElseThrow().bytes());
        assertEquals(batches.find("shop", plan.id()), restored.find("shop", plan.id()));
    }

    @Test
    void allTablesAreOfOneMoment() throws Exception {
        Sql sql = Databases.h2();
        sql.in(handle -> handle.execute("create table one(n int primary key, filling blob)"));
        sql.in(handle -> handle.execute("create table two(n int primary key)"));
        AtomicBoolean stop = new AtomicBoolean();
        AtomicInteger written = new AtomicInteger();
        byte[] filling = new byte[20_000];
        Thread writer = new Thread(() -> {
            for (int n = 1; !stop.get(); n++) {
                int number = n;
                sql.in(handle -> {
                    handle.execute("insert into one values (?, ?)", number, filling);
                    return handle.execute("insert into two values (?)", number);
                });
                written.set(number);
            }
        });
        writer.start();
        try {
            for (int i = 0; i < 3; i++) {
                while (written.get() < 50 * (i + 1)) {
                    Thread.sleep(1);
                }
                int before = written.get();
                Path copy = copied(sql);
                assertTrue(written.get() > before, "nothing was written meanwhile");
                DataSource other = fresh();
                new Sql(other, Dialect.H2).restore(copy);
                List<Integer> one = numbers(other, "one");
                assertEquals(one, numbers(other, "two"));
                assertTrue(one.size() >= before, one.size() + " of " + before);
            }
        } finally {
            stop.set(true);
            writer.join();
        }
    }

    private static List<Integer> numbers(DataSource source, String table) {
        return Jdbi.create(source)
                .withHandle(handle -> handle.createQuery("select n from " + table + " order by n")
                        .mapTo(Integer.class)
                        .list());
    }

    @Test
    void aDatabaseThatHoldsSomethingIsLeftAlone() throws IOException {
        Sql sql = Databases.h2();
        Path copy = copied(sql);
        IllegalStateException refused = assertThrows(IllegalStateException.class, () -> sql.restore(copy));
        assertTrue(refused.getMessage().contains("holds"), refused::getMessage);
    }

    @Test
    void aCopyThatBrokeOffIsRefusedAndLeavesNothing() throws IOException {
        Path copy = copied(Databases.h2());
        byte[] whole = Files.readAllBytes(copy);
        Files.write(copy, Arrays.copyOf(whole, whole.length * 2 / 3));
        DataSource other = fresh();
        Sql sql = new Sql(other, Dialect.H2);
        IllegalStateException refused = assertThrows(IllegalStateException.class, () -> sql.restore(copy));
        assertTrue(refused.getMessage().contains("no whole copy"), refused::getMessage);
        Files.write(copy, whole);
        sql.restore(copy);
    }

    @Test
    void whoeverGoesAwayMeanwhileLeavesTheDatabaseAsItWas() throws IOException {
        Sql sql = Databases.h2();
        byte[] filling = new byte[2_000_000];
        new Random(1).nextBytes(filling);
        sql.in(handle -> handle.execute("create table one(filling blob)"));
        for (int i = 0; i < 10; i++) {
            sql.in(handle -> handle.execute("insert into one values (?)", filling));
        }
        long before = leftBehind();
        OutputStream gone = new ByteArrayOutputStream() {
            @Override
            public synchronized void write(byte[] bytes, int from, int length) {
                throw new IllegalStateException("gone");
            }
        };
        assertThrows(IllegalStateException.class, () -> new EmbeddedCopy(sql).writeTo(gone));
        assertEquals(before, leftBehind());
        int rows = sql.in(handle ->
                handle.createQuery("select count(*) from one").mapTo(int.class).one());
        assertEquals(10, rows);
        assertTrue(Files.size(copied(sql)) > 10_000_000);
    }

    private static long leftBehind() throws IOException {
        try (var files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().startsWith("seamtally-copy"))
                    .count();
        }
    }

    @Test
    void aServersDatabaseIsCopiedByItsOwnTools() {
        Sql sql = Databases.postgres();
        assertFalse(new EmbeddedCopy(sql).isTaken());
        assertThrows(IllegalStateException.class, () -> sql.restore(folder.resolve("copy")));
    }
}
