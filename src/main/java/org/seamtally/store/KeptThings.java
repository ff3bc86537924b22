package org.seamtally.store;

import io.agroal.api.AgroalDataSource;
import io.quarkus.arc.InjectableInstance;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.InstantSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.batch.KeptBatches;
import org.seamtally.kept.IdempotencyKeys;

/** What the service keeps, and where. */
@ApplicationScoped
public class KeptThings {

    @Produces
    @Singleton
    Sql sql(@Any InjectableInstance<AgroalDataSource> sources, @ConfigProperty(name = ChosenDatabase.URL) String url) {
        return new Sql(sources.getActive(), Dialect.of(url));
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
