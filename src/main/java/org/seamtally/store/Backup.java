package org.seamtally.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.seamtally.kept.UnavailableException;

/** Copies the embedded database while it is in use. A database server has tools of its own for that. */
public final class Backup {

    private static final String IN_MEMORY = "90126";

    private final Sql sql;

    /** @param sql what is to be copied */
    public Backup(Sql sql) {
        this.sql = sql;
    }

    /**
     * Writes a copy of all that was committed before, as a ZIP file of the database's file. Whoever reads or writes goes on
     * meanwhile; of what is committed meanwhile each transaction is in it as a whole or not at all.
     *
     * @param zip written over where it is there
     * @return whether it was written; false where what is kept is not in a file of this service
     * @throws UnavailableException where the database cannot be read or the copy not be written
     */
    public boolean writeTo(Path zip) {
        if (sql.dialect() != Dialect.H2) {
            return false;
        }
        // not by the way of transactions: a copy that cannot be written is no fault of the database's own file
        try (Connection connection = sql.source().getConnection();
                PreparedStatement backup = connection.prepareStatement("backup to ?")) {
            backup.setString(1, zip.toAbsolutePath().toString());
            backup.execute();
            return true;
        } catch (SQLException e) {
            if (IN_MEMORY.equals(e.getSQLState())) {
                return false;
            }
            throw new UnavailableException("The backup could not be made.", e);
        }
    }
}
