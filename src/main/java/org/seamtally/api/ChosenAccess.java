package org.seamtally.api;

import io.smallrye.config.ConfigSourceContext;
import io.smallrye.config.ConfigSourceFactory;
import io.smallrye.config.ConfigValue;
import io.smallrye.config.PropertiesConfigSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.eclipse.microprofile.config.spi.ConfigSource;

/**
 * Turns {@link AccessSettings} into the settings of the framework's token check, when the service starts; where there are
 * none it is off.
 */
public final class ChosenAccess implements ConfigSourceFactory {

    private static final String OURS = "seamtally.access.";
    private static final String OIDC = "quarkus.oidc.";
    private static final String PERMISSION = "quarkus.http.auth.permission.";

    // over the settings in the jar, where the check is off
    private static final int ORDINAL = 275;

    // AES takes a key of 256 bits
    private static final int SHORTEST_SECRET = 32;

    @Override
    public Iterable<ConfigSource> getConfigSources(ConfigSourceContext context) {
        String key = value(context, "public-key");
        String provider = value(context, "provider");
        String client = value(context, "page.client-id");
        if (key != null && provider != null) {
            throw refused("public-key and provider are two ways of checking tokens: one of them is taken");
        }
        if (client != null && provider == null) {
            throw refused("page.client-id is what a provider knows the page as: provider is needed with it");
        }
        if (key == null && provider == null) {
            return List.of();
        }
        Map<String, String> settings = new HashMap<>();
        tokens(settings, context);
        if (key != null) {
            publicKey(settings, context, key);
        } else {
            settings.put(OIDC + "auth-server-url", provider);
            settings.put(OIDC + "application-type", client == null ? "service" : "hybrid");
        }
        if (client != null) {
            logIn(settings, context, client);
        }
        permissions(settings);
        return List.of(new PropertiesConfigSource(settings, "who may come in", ORDINAL));
    }

    /** What of a token is checked, and read, whoever issued it. */
    private static void tokens(Map<String, String> settings, ConfigSourceContext context) {
        settings.put(OIDC + "tenant-enabled", "true");
        settings.put(OIDC + "token.audience", orElse(value(context, "audience"), AccessSettings.USUAL_AUDIENCE));
        settings.put(
                OIDC + "roles.role-claim-path", orElse(value(context, "claims.roles"), AccessSettings.USUAL_ROLES));
        // what says nothing by itself is not taken: the provider is not asked about each request
        settings.put(OIDC + "token.allow-opaque-token-introspection", "false");
        settings.put(OIDC + "token.allow-jwt-introspection", "false");
        String issuer = value(context, "issuer");
        if (issuer != null) {
            settings.put(OIDC + "token.issuer", issuer);
        }
    }

    private static void publicKey(Map<String, String> settings, ConfigSourceContext context, String key) {
        if (value(context, "issuer") == null) {
            throw refused("with public-key, issuer is needed: it says whose tokens are taken");
        }
        settings.put(OIDC + "public-key", pem(key));
        settings.put(OIDC + "application-type", "service");
    }

    /** @param given PEM, or the path of a file with it */
    private static String pem(String given) {
        if (given.contains("-----BEGIN")) {
            return given;
        }
        try {
            return Files.readString(Path.of(given.strip()));
        } catch (IOException | InvalidPathException e) {
            throw refused("public-key is neither PEM nor a file that can be read");
        }
    }

    private static void logIn(Map<String, String> settings, ConfigSourceContext context, String client) {
        String secret = value(context, "page.client-secret");
        String session = orElse(value(context, "page.session-secret"), secret);
        if (session == null || session.length() < SHORTEST_SECRET) {
            throw refused("page.session-secret, or else page.client-secret, is to have " + SHORTEST_SECRET
                    + " characters or more: sessions are encrypted by it");
        }
        settings.put(OIDC + "client-id", client);
        // a log-in's own token is meant for the page
        settings.put(OIDC + "token.audience", settings.get(OIDC + "token.audience") + "," + client);
        // back to where the page is: providers know that address alone
        settings.put(OIDC + "authentication.redirect-path", PageResource.PATH);
        settings.put(OIDC + "authentication.pkce-required", "true");
        settings.put(OIDC + "authentication.nonce-required", "true");
        // strict would not come along on the way back from the provider
        settings.put(OIDC + "authentication.cookie-same-site", "lax");
        // small enough for a cookie, and good for a working day where the provider lets a log-in be renewed
        settings.put(OIDC + "token-state-manager.strategy", "id-refresh-tokens");
        settings.put(OIDC + "token.refresh-expired", "true");
        settings.put(OIDC + "authentication.session-age-extension", "12H");
        if (secret != null) {
            settings.put(OIDC + "credentials.secret", secret);
        }
        permission(settings, "page", PageResource.PATH, "authenticated");
        settings.put(OIDC + "token-state-manager.encryption-secret", session);
        settings.put(OIDC + "authentication.state-secret", session);
    }

    /** What looks after the service, beside its endpoints: alive and ready are for whoever starts it, and tell no more. */
    private static void permissions(Map<String, String> settings) {
        permission(settings, "operations", "/q/*", "operator");
        permission(settings, "probes", "/q/health/live,/q/health/ready,/q/health/started", "permit");
        permission(settings, "document", "/q/openapi", "authenticated");
        settings.put("quarkus.http.auth.policy.operator.roles-allowed", Roles.OPERATOR);
    }

    private static void permission(Map<String, String> settings, String name, String paths, String policy) {
        settings.put(PERMISSION + name + ".paths", paths);
        settings.put(PERMISSION + name + ".policy", policy);
    }

    private static IllegalArgumentException refused(String because) {
        return new IllegalArgumentException("seamtally.access: " + because + ".");
    }

    private static String orElse(String value, String other) {
        return value == null ? other : value;
    }

    private static String value(ConfigSourceContext context, String name) {
        ConfigValue value = context.getValue(OURS + name);
        return value == null || value.getValue() == null || value.getValue().isBlank() ? null : value.getValue();
    }

    @Override
    public OptionalInt getPriority() {
        return OptionalInt.of(ORDINAL);
    }
}
