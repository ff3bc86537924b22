package org.seamtally.api;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** The service as it asks for tokens of {@link Tokens}, checked by the issuer's public key. */
public final class Keyed implements QuarkusTestProfile {

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of("seamtally.access.public-key", Tokens.pem(), "seamtally.access.issuer", Tokens.ISSUER);
    }
}
