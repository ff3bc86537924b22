package org.seamtally.load;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/** Chunks that were handed out and have no result, read from the database itself. */
record Picks(String url, String user, String password) {

    private static final String PICKED = "select count(*) from chunk_task where picked = ?";
    private static final String PICKED_BY = PICKED + " and picked_by like ?";

    /** All of them. */
    int unfinished() throws SQLException {
        return count(PICKED, null);
    }

    /** Those of one process, whose number its name begins with. */
    int unfinishedBy(long process) throws SQLException {
        return count(PICKED_BY, process + "@%");
    }

    private int count(String sql, String replica) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, user, password);
                PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setBoolean(1, true);
            if (replica != null) {
                statement.setString(2, replica);
            }
            try (ResultSet rows = statement.executeQuery()) {
                rows.next();
                return rows.getInt(1);
            }
        }
    }
}
