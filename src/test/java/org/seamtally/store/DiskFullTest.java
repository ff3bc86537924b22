package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.configuration.supplier.AgroalDataSourceConfigurationSupplier;
import io.agroal.api.security.NamePrincipal;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import org.h2.store.fs.FilePath;
import org.junit.jupiter.api.Test;
import org.seamtally.batch.BatchPlan;
import org.seamtally.batch.Chunk;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptBatches.Sealed;
import org.seamtally.kept.UnavailableException;

/** The embedded database on a disk that runs full: told in plain words, nothing acknowledged lost, and it goes on with space. */
class DiskFullTest {

    private static final InstantSource CLOCK = InstantSource.system();

    private static AgroalDataSource pool(String url) throws Exception {
        return AgroalDataSource.from(new AgroalDataSourceConfigurationSupplier()
                .connectionPoolConfiguration(pool -> pool.maxSize(3)
                        .acquisitionTimeout(Duration.ofSeconds(30))
                        .validateOnBorrow(true)
                        .connectionFactoryConfiguration(
                                factory -> factory.jdbcUrl(url).principal(new NamePrincipal("sa")))));
    }

    @Test
    void whatWasAcknowledgedIsThereWhenThereIsSpaceAgain() throws Exception {
        FilePath.register(new FillingDisk());
        String url = "jdbc:h2:filling:./target/kept/" + UUID.randomUUID() + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE";
        byte[] bytes = new byte[300_000];
        new Random(7).nextBytes(bytes);
        BatchPlan plan =
                new BatchPlan(UUID.randomUUID(), "shop", "engine", "si", Form.CSV, CLOCK.instant(), Optional.empty());
        try (AgroalDataSource source = pool(url)) {
            SqlBatches batches = new SqlBatches(Databases.migrated(source, Dialect.H2), CLOCK);
            batches.begin(plan);
            batches.add("shop", plan.id(), 0, new Chunk(1, bytes));

            FillingDisk.FULL.set(true);
            UnavailableException refused = assertThrows(
                    UnavailableException.class, () -> batches.add("shop", plan.id(), 1, new Chunk(1, bytes)));
            assertTrue(refused.getMessage().contains("disk"), refused::getMessage);
            assertThrows(
                    UnavailableException.class,
                    () -> batches.seal("shop", plan.id(), new Sealed(1, 1, "00", CLOCK.instant()), null));

            FillingDisk.FULL.set(false);
            addOnceOpenedAnew(batches, plan, new Chunk(1, bytes));
            batches.seal("shop", plan.id(), new Sealed(2, 2, "00", CLOCK.instant()), null);
        } finally {
            FillingDisk.FULL.set(false);
        }

        try (AgroalDataSource source = pool(url)) {
            SqlBatches again = new SqlBatches(Databases.migrated(source, Dialect.H2), CLOCK);
            assertEquals(2, again.find("shop", plan.id()).orElseThrow().sealed().chunks());
            for (int chunk = 0; chunk < 2; chunk++) {
                assertArrayEquals(
                        bytes, again.chunk(plan.id(), chunk).orElseThrow().bytes());
            }
        }
    }

    /** Until the broken file is let go of by all connections a caller may be told once more to come back. */
    private static void addOnceOpenedAnew(SqlBatches batches, BatchPlan plan, Chunk chunk) {
        UnavailableException last = null;
        for (int i = 0; i < 5; i++) {
            try {
                batches.add("shop", plan.id(), 1, chunk);
                return;
            } catch (UnavailableException e) {
                last = e;
            }
        }
        throw last;
    }
}
