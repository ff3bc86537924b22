package org.seamtally.store;

import java.util.UUID;
import javax.sql.DataSource;
import org.h2.jdbcx.JdbcConnectionPool;

/** Fresh databases to keep things in, of both kinds, with their tables made. */
final class Databases {

    private Databases() {}

    /** On a file of its own under the build's directory. */
    static Sql h2() {
        return migrated(h2File("target/kept/" + UUID.randomUUID()), Dialect.H2);
    }

    static DataSource h2File(String path) {
        return JdbcConnectionPool.create(
                DatabaseUrl.of("jdbc:h2:file:./" + path).complete(), "sa", "");
    }

    /** On the server that all tests share. */
    static Sql postgres() {
        return migrated(PostgresServer.fresh(), Dialect.POSTGRESQL);
    }

    static Sql migrated(DataSource source, Dialect dialect) {
        Sql sql = new Sql(source, dialect);
        sql.migrate();
        return sql;
    }
}
