package org.seamtally.store;

import javax.sql.DataSource;
import org.flywaydb.core.Flyway;

/** Makes the tables, and changes them from version to version. */
final class Migrations {

    private Migrations() {}

    static void run(DataSource source, Dialect dialect) {
        Flyway.configure(Migrations.class.getClassLoader())
                .dataSource(source)
                .locations("classpath:db/kept")
                .placeholders(dialect.placeholders())
                .failOnMissingLocations(true)
                .load()
                .migrate();
    }
}
