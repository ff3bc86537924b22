package org.seamtally.store;

import io.agroal.api.AgroalDataSource;
import io.quarkus.arc.InjectableInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.batch.KeptBatches;
import org.seamtally.kept.IdempotencyKeys;
import org.seamtally.kept.KeptCopy;

/** What the service keeps, and where. */
@ApplicationScoped
public class KeptThings {

    /** The copy that a new embedded database is made from when the service starts. */
    static final String RESTORE = "seamtally.database.restore";

    /** @throws IllegalStateException where a copy is to be restored and cannot be */
    @Produces
    @Singleton
    Sql sql(
            @Any InjectableInstance<AgroalDataSource> sources,
            @ConfigProperty(name = ChosenDatabase.URL) String url,
            @ConfigProperty(name = RESTORE) Optional<Path> restore) {
        Sql sql = new Sql(sources.getActive(), Dialect.of(url));
        restore.ifPresent(sql::restore);
        return sql;
    }

    @Produces
    @Singleton
    KeptCopy copy(Sql sql) {
        return new EmbeddedCopy(sql);
    }

    @Produces
    @Singleton
    DatabaseClock clock(Sql sql) {
        return new DatabaseClock(sql);
    }

    @Produces
    @Singleton
    KeptBatches batches(Sql sql, InstantSource clock) {
        return new SqlBatches(sql, clock);
    }

    @Produces
    @Singleton
    IdempotencyKeys keys(Sql sql) {
        return new SqlKeys(sql);
    }
}
