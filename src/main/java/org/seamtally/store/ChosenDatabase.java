package org.seamtally.store;

import io.smallrye.config.ConfigSourceContext;
import io.smallrye.config.ConfigSourceFactory;
import io.smallrye.config.ConfigValue;
import io.smallrye.config.PropertiesConfigSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.eclipse.microprofile.config.spi.ConfigSource;

/**
 * Turns one setting, the database's URL, into the settings of the framework's two data sources, when the service starts:
 * the one it names is active, and the other is not there.
 */
public final class ChosenDatabase implements ConfigSourceFactory {

    /** Where things are kept. */
    static final String URL = "seamtally.database.url";

    // over the settings in the jar, which say nothing about which is active
    private static final int ORDINAL = 275;

    @Override
    public Iterable<ConfigSource> getConfigSources(ConfigSourceContext context) {
        String url = value(context, URL);
        if (url == null) {
            return List.of();
        }
        DatabaseUrl chosen = DatabaseUrl.of(url);
        Map<String, String> settings = new HashMap<>();
        for (Dialect dialect : Dialect.values()) {
            settings.put(setting(dialect, "active"), String.valueOf(dialect == chosen.dialect()));
        }
        settings.put(setting(chosen.dialect(), "jdbc.url"), chosen.complete());
        put(settings, chosen.dialect(), "username", value(context, "seamtally.database.username"));
        put(settings, chosen.dialect(), "password", value(context, "seamtally.database.password"));
        return List.of(new PropertiesConfigSource(settings, "the chosen database", ORDINAL));
    }

    private static void put(Map<String, String> settings, Dialect dialect, String key, String value) {
        if (value != null) {
            settings.put(setting(dialect, key), value);
        }
    }

    private static String setting(Dialect dialect, String key) {
        return "quarkus.datasource." + dialect.dataSource() + "." + key;
    }

    private static String value(ConfigSourceContext context, String name) {
        ConfigValue value = context.getValue(name);
        return value == null || value.getValue() == null || value.getValue().isBlank() ? null : value.getValue();
    }

    @Override
    public OptionalInt getPriority() {
        return OptionalInt.of(ORDINAL);
    }
}
