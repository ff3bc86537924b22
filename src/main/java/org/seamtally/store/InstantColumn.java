package org.seamtally.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import org.jdbi.v3.core.mapper.ColumnMapper;
import org.jdbi.v3.core.statement.StatementContext;

/** Reads a time with its offset, null where there is none. */
final class InstantColumn implements ColumnMapper<Instant> {

    @Override
    public Instant map(ResultSet row, int column, StatementContext context) throws SQLException {
        return at(row.getObject(column, OffsetDateTime.class));
    }

    static Instant of(ResultSet row, String column) throws SQLException {
        return at(row.getObject(column, OffsetDateTime.class));
    }

    private static Instant at(OffsetDateTime time) {
        return time == null ? null : time.toInstant();
    }
}
