package org.seamtally.load;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** How often the chunks that are in somebody's hands were handed out, read from the database itself. */
record HandedOut(String url, String user, String password) {

    /**
     * The most often that one of them was; 0 where none is in hand.
     *
     * <p>A chunk's task begins as version 1; each time that it is picked, or given back, is one more.
     */
    int mostOften() throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, user, password);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "select coalesce(max(version), 1) from chunk_task where picked = true")) {
            rows.next();
            return rows.getInt(1) / 2;
        }
    }
}
