package org.seamtally.store;

import com.github.kagkarlsson.scheduler.jdbc.DefaultJdbcCustomization;
import com.github.kagkarlsson.scheduler.jdbc.JdbcCustomization;
import com.github.kagkarlsson.scheduler.jdbc.PostgreSqlJdbcCustomization;

/**
 * Narrows what the task library looks at to the tasks of one name. By itself it would pick tasks of names it does not know
 * before it notices, and drop them only then; a replica of another version must not touch them at all.
 */
final class OwnTasks {

    private OwnTasks() {}

    static JdbcCustomization of(Dialect dialect, String task) {
        String condition = " and task_name = '" + task.replace("'", "''") + "' ";
        return dialect == Dialect.H2 ? new Embedded(condition) : new Shared(condition);
    }

    private static final class Embedded extends DefaultJdbcCustomization {

        private final String condition;

        Embedded(String condition) {
            super(false);
            this.condition = condition;
        }

        @Override
        public String createSelectDueQuery(String table, int limit, String and, boolean byPriority) {
            return super.createSelectDueQuery(table, limit, and + condition, byPriority);
        }
    }

    private static final class Shared extends PostgreSqlJdbcCustomization {

        private final String condition;

        Shared(String condition) {
            // of its two ways to lock and fetch the one whose query can be narrowed
            super(true, false);
            this.condition = condition;
        }

        @Override
        public String createGenericSelectForUpdateQuery(String table, int limit, String and, boolean byPriority) {
            return super.createGenericSelectForUpdateQuery(table, limit, and + condition, byPriority);
        }
    }
}
