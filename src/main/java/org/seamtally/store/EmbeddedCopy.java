package org.seamtally.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicReference;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.seamtally.kept.KeptCopy;
import org.seamtally.kept.UnavailableException;

/**
 * The embedded database as the statements that make it anew, compressed: all of them of one moment. The database writes them
 * to a file only; they are passed on while that grows, so that a long copy keeps its connection.
 */
public final class EmbeddedCopy implements KeptCopy {

    /** What the database is told of the file's form, when it writes and when it reads. */
    private static final String FORM = " compression gzip charset 'UTF-8'";

    private static final long LOOK_MS = 50;

    private final Sql sql;

    /** @param sql the database */
    public EmbeddedCopy(Sql sql) {
        this.sql = sql;
    }

    @Override
    public boolean isTaken() {
        return sql.dialect() == Dialect.H2;
    }

    @Override
    public void writeTo(OutputStream out) throws IOException {
        Path folder = Files.createTempDirectory("seamtally-copy");
        Path file = folder.resolve("copy");
        Script script = new Script(file);
        FutureTask<Void> made = new FutureTask<>(script, null);
        Thread writer = new Thread(made, "copy of what is kept");
        try {
            writer.start();
            pass(file, made, out);
            whole(made);
        } finally {
            script.giveUp();
            await(writer);
            Files.deleteIfExists(file);
            Files.delete(folder);
        }
    }

    private static void pass(Path file, FutureTask<Void> made, OutputStream out) throws IOException {
        while (!Files.exists(file)) {
            if (pause(made) && !Files.exists(file)) {
                return;
            }
        }
        try (InputStream written = Files.newInputStream(file)) {
            boolean done;
            do {
                // looked at first: what is read after it is all there was
                done = pause(made);
                written.transferTo(out);
            } while (!done);
        }
    }

    /** Waits a little for the writer. @return whether it has ended */
    private static boolean pause(FutureTask<Void> made) throws IOException {
        try {
            made.get(LOOK_MS, TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            return false;
        } catch (ExecutionException e) {
            // told once all that it wrote was passed on
            return true;
        } catch (InterruptedException e) {
            throw interrupted();
        }
        return true;
    }

    private static void whole(FutureTask<Void> made) throws IOException {
        try {
            made.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof UnavailableException away) {
                throw away;
            }
            throw new IOException("the copy broke off", e.getCause());
        } catch (InterruptedException e) {
            throw interrupted();
        }
    }

    private static InterruptedIOException interrupted() {
        Thread.currentThread().interrupt();
        return new InterruptedIOException("the copy was broken off");
    }

    /** Never interrupted itself: the database would close its file. */
    private static void await(Thread writer) {
        boolean interrupted = false;
        while (writer.isAlive()) {
            try {
                writer.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Lets the database write the file. */
    private final class Script implements Runnable {

        private final Path file;
        private final AtomicReference<Statement> statement = new AtomicReference<>();

        Script(Path file) {
            this.file = file;
        }

        @Override
        public void run() {
            sql.in(this::write);
        }

        private Void write(Handle handle) {
            // all tables as they are when the first is looked at
            isolation(handle, "snapshot");
            try (Statement running = handle.getConnection().createStatement()) {
                statement.set(running);
                running.execute("script nosettings to " + quoted(file) + FORM);
            } catch (SQLException e) {
                throw new UnableToExecuteStatementException(e, null);
            } finally {
                statement.set(null);
                isolation(handle, "read committed");
            }
            return null;
        }

        private void isolation(Handle handle, String level) {
            handle.execute("set session characteristics as transaction isolation level " + level);
        }

        /** Nobody waits for it any longer. */
        void giveUp() {
            Statement running = statement.get();
            if (running != null) {
                try {
                    running.cancel();
                } catch (SQLException e) {
                    // it has ended by itself
                    return;
                }
            }
        }
    }

    /**
     * Makes a database anew from its copy.
     *
     * @param handle a connection to one that holds nothing
     * @throws IllegalStateException where it holds something
     */
    static void restore(Handle handle, Path file) {
        int tables = handle.createQuery("select count(*) from information_schema.tables where table_schema = 'PUBLIC'")
                .mapTo(int.class)
                .one();
        if (tables > 0) {
            throw new IllegalStateException(KeptThings.RESTORE + " is " + file + ", but the database holds " + tables
                    + " tables already: a copy is put into a new one only.");
        }
        try {
            handle.execute("runscript from " + quoted(file) + FORM);
        } catch (RuntimeException e) {
            handle.execute("drop all objects");
            throw new IllegalStateException(KeptThings.RESTORE + " is " + file + ", which is no whole copy.", e);
        }
    }

    private static String quoted(Path file) {
        return "'" + file.toAbsolutePath().toString().replace("'", "''") + "'";
    }
}
