package org.seamtally.api;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** The service as it asks for tokens of {@link Tokens}, checked by the issuer's public key. */
public final class Keyed implements QuarkusTestProfile {

    /** Where its log is written. */
    static final String LOG = "target/keyed-log.json";

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of(
                "seamtally.access.public-key",
                Tokens.pem(),
                "seamtally.access.issuer",
                Tokens.ISSUER,
                // as JSON, which is what a shop that gathers logs has on its console
                "quarkus.log.file.enabled",
                "true",
                "quarkus.log.file.path",
                LOG,
                "quarkus.log.file.json.enabled",
                "true");
    }
}
