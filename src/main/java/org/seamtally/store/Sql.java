package org.seamtally.store;

import io.agroal.api.AgroalDataSource;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.seamtally.kept.UnavailableException;

/** The one way to what is kept: a transaction, and faults of the database told apart from faults of ours. */
public final class Sql {

    private static final Logger LOG = Logger.getLogger(Sql.class);

    private final Jdbi jdbi;
    private final DataSource source;
    private final Dialect dialect;
    private final AtomicBoolean ready = new AtomicBoolean();

    /** @param source connections, which commit by themselves unless told otherwise */
    public Sql(DataSource source, Dialect dialect) {
        this.source = source;
        this.dialect = dialect;
        this.jdbi = Jdbi.create(source);
        jdbi.registerArgument(new InstantArgument());
        jdbi.registerColumnMapper(new InstantColumn());
    }

    /**
     * Puts a copy into the embedded database, which is new.
     *
     * @throws IllegalStateException where it is not, is no embedded one, or what is there is no whole copy
     */
    void restore(Path copy) {
        if (dialect != Dialect.H2) {
            throw new IllegalStateException(
                    KeptThings.RESTORE + " is for the embedded database: a server's is restored by its own tools.");
        }
        jdbi.useHandle(handle -> EmbeddedCopy.restore(handle, copy));
    }

    /** Makes or brings up to date the tables; until then nothing is kept. */
    public void migrate() {
        try {
            Migrations.run(source, dialect);
        } catch (RuntimeException e) {
            throw Faults.asSeen(e);
        }
        ready.set(true);
    }

    /**
     * Runs a transaction: committed where the work returns, rolled back where it throws.
     *
     * @throws UnavailableException where the database cannot be reached or cannot write
     */
    public <T> T in(Function<Handle, T> work) {
        if (!ready.get()) {
            throw new UnavailableException("What is kept cannot be reached yet.", null);
        }
        try {
            return jdbi.inTransaction(work::apply);
        } catch (JdbiException e) {
            if (dialect.ofOneProcess() && Faults.brokeTheFile(e)) {
                reopen();
            }
            throw Faults.asSeen(e);
        }
    }

    /**
     * Lets go of the embedded database, which stays broken for all its connections once a write failed; the next connection
     * opens it anew, with all that was committed.
     */
    private void reopen() {
        try (Handle handle = jdbi.open()) {
            handle.execute("shutdown immediately");
        } catch (JdbiException e) {
            LOG.debug("The database was closed already.", e);
        }
        if (source instanceof AgroalDataSource pool) {
            // in its own time: connections in use, which may be new ones by then, are closed when they are given back
            pool.flush(AgroalDataSource.FlushMode.GRACEFUL);
        }
    }

    /** Where connections come from, for libraries that bring their own SQL. */
    DataSource source() {
        return source;
    }

    Dialect dialect() {
        return dialect;
    }
}
