package org.seamtally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One setting says where things are kept. */
class ChosenDatabaseTest {

    private static SmallRyeConfig config(Map<String, String> given) {
        return new SmallRyeConfigBuilder()
                .addDefaultInterceptors()
                .withSources(new PropertiesConfigSource(given, "given", 250))
                .withSources(new ChosenDatabase())
                .build();
    }

    private static String setting(SmallRyeConfig config, String name) {
        return config.getValue("quarkus.datasource." + name, String.class);
    }

    @Test
    void aFileMakesTheEmbeddedDatabaseActiveAndWritesAtOnce() {
        SmallRyeConfig config = config(Map.of("seamtally.database.url", "jdbc:h2:file:./somewhere/kept"));
        assertEquals("true", setting(config, "h2.active"));
        assertEquals("false", setting(config, "pg.active"));
        assertEquals(
                "jdbc:h2:file:./somewhere/kept;WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;CACHE_SIZE=8192",
                setting(config, "h2.jdbc.url"));
        assertTrue(config.getOptionalValue("quarkus.datasource.pg.jdbc.url", String.class)
                .isEmpty());
    }

    @Test
    void aServerMakesPostgresActiveWithItsUser() {
        SmallRyeConfig config = config(Map.of(
                "seamtally.database.url",
                "jdbc:postgresql://db.example:5432/kept",
                "seamtally.database.username",
                "welder",
                "seamtally.database.password",
                "secret"));
        assertEquals("false", setting(config, "h2.active"));
        assertEquals("true", setting(config, "pg.active"));
        assertEquals("jdbc:postgresql://db.example:5432/kept", setting(config, "pg.jdbc.url"));
        assertEquals("welder", setting(config, "pg.username"));
        assertEquals("secret", setting(config, "pg.password"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "jdbc:other:thing",
                "kept.db",
                "jdbc:h2:tcp://localhost/kept",
                "jdbc:h2:./kept",
                "jdbc:h2:file:./kept;AUTO_SERVER=TRUE",
                "jdbc:h2:file:./kept;MODE=PostgreSQL"
            })
    void anotherIsRefusedByItsName(String url) {
        Map<String, String> given = Map.of("seamtally.database.url", url);
        RuntimeException refused = assertThrows(RuntimeException.class, () -> config(given));
        assertTrue(Faults.root(refused).getMessage().contains("seamtally.database.url is " + url));
    }
}
