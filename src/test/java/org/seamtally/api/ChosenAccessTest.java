package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.smallrye.config.ConfigSourceContext;
import io.smallrye.config.ConfigValue;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.config.spi.ConfigSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Our settings of access as the framework's. */
class ChosenAccessTest {

    private static final String PROVIDER = "https://login.example/shop";
    private static final String SECRET = "a secret of more than thirty-two characters";

    /** @param settings names without what stands before all of them, and values */
    private static Map<String, String> made(String... settings) {
        Map<String, String> given = new HashMap<>();
        for (int i = 0; i < settings.length; i += 2) {
            given.put("seamtally.access." + settings[i], settings[i + 1]);
        }
        Map<String, String> made = new HashMap<>();
        for (ConfigSource source : new ChosenAccess().getConfigSources(context(given))) {
            made.putAll(source.getProperties());
        }
        return made;
    }

    private static ConfigSourceContext context(Map<String, String> given) {
        return new ConfigSourceContext() {
            @Override
            public ConfigValue getValue(String name) {
                return ConfigValue.builder()
                        .withName(name)
                        .withValue(given.get(name))
                        .build();
            }

            @Override
            public List<String> getProfiles() {
                return List.of();
            }

            @Override
            public List<ConfigSource> getConfigSources() {
                return List.of();
            }

            @Override
            public Iterator<String> iterateNames() {
                return given.keySet().iterator();
            }
        };
    }

    private static String refused(String... settings) {
        return assertThrows(IllegalArgumentException.class, () -> made(settings))
                .getMessage();
    }

    @Test
    void nothingIsAskedWhereNothingIsSet() {
        assertEquals(Map.of(), made());
        assertEquals(Map.of(), made("audience", "quotes", "public-key", " "));
    }

    @Test
    void aKeyMayStandInAFile(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("issuer.pem"), Tokens.pem());
        for (String key : List.of(Tokens.pem(), file.toString())) {
            Map<String, String> made = made("public-key", key, "issuer", Tokens.ISSUER);
            assertEquals(Tokens.pem(), made.get("quarkus.oidc.public-key"));
            assertEquals("seamtally", made.get("quarkus.oidc.token.audience"));
            assertEquals("service", made.get("quarkus.oidc.application-type"));
            assertEquals("true", made.get("quarkus.oidc.tenant-enabled"));
        }
    }

    @Test
    void aProviderAloneTakesTokensAndWithAClientTheyMayLogIn() {
        assertEquals("service", made("provider", PROVIDER).get("quarkus.oidc.application-type"));
        Map<String, String> page = made("provider", PROVIDER, "page.client-id", "p", "page.client-secret", SECRET);
        assertEquals("hybrid", page.get("quarkus.oidc.application-type"));
        assertEquals("seamtally,p", page.get("quarkus.oidc.token.audience"));
        assertEquals("true", page.get("quarkus.oidc.authentication.pkce-required"));
    }

    @Test
    void whatDoesNotGoTogetherIsRefusedAndNoSecretIsTold() {
        assertTrue(refused("public-key", Tokens.pem(), "provider", PROVIDER).contains("one of them"));
        assertTrue(refused("public-key", Tokens.pem()).contains("issuer"));
        assertTrue(
                refused("public-key", "/no/such/file", "issuer", Tokens.ISSUER).contains("neither PEM nor a file"));
        assertTrue(refused("page.client-id", "p").contains("provider is needed"));
        assertTrue(refused("public-key", Tokens.pem(), "issuer", Tokens.ISSUER, "page.client-id", "p")
                .contains("provider is needed"));
        String tooShort = refused("provider", PROVIDER, "page.client-id", "p", "page.client-secret", "hunter2");
        assertTrue(tooShort.contains("32 characters"), tooShort);
        assertFalse(tooShort.contains("hunter2"), tooShort);
    }
}
