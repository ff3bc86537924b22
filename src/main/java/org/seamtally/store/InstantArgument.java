package org.seamtally.store;

import java.sql.Types;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import org.jdbi.v3.core.argument.AbstractArgumentFactory;
import org.jdbi.v3.core.argument.Argument;
import org.jdbi.v3.core.config.ConfigRegistry;

/** Times are kept to the microsecond, which both databases can, and cut rather than rounded, so that none lies ahead. */
final class InstantArgument extends AbstractArgumentFactory<Instant> {

    InstantArgument() {
        super(Types.TIMESTAMP_WITH_TIMEZONE);
    }

    @Override
    protected Argument build(Instant value, ConfigRegistry config) {
        return (position, statement, context) -> statement.setObject(
                position, value.truncatedTo(ChronoUnit.MICROS).atOffset(ZoneOffset.UTC));
    }
}
