package org.seamtally.api;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.util.Optional;

/**
 * Who may come in. Without {@code public-key} and {@code provider} the service is open, and stays on its own machine. What
 * the framework is told of it: {@link ChosenAccess}.
 */
@ConfigMapping(prefix = "seamtally.access")
public interface AccessSettings {

    /** Whom tokens are meant for, unless said. */
    String USUAL_AUDIENCE = "seamtally";

    /** The claim with the roles, unless said. */
    String USUAL_ROLES = "roles";

    /** The key that an issuer's tokens are checked by: PEM, or the path of a file with it. */
    Optional<String> publicKey();

    /** Who issues the tokens, as they say themselves; with a provider as it says itself where this is left out. */
    Optional<String> issuer();

    /** Where an OpenID Connect provider is: its tokens are taken, checked by the keys it publishes. */
    Optional<String> provider();

    /** Whom tokens are meant for: one that was issued for something else is not taken. */
    @WithDefault(USUAL_AUDIENCE)
    String audience();

    Claims claims();

    Page page();

    /** Claims of a token that are read. */
    interface Claims {

        /** The one with the roles; a slash leads into an object. */
        @WithDefault(USUAL_ROLES)
        String roles();

        /** The one with the shop. */
        @WithDefault("shop")
        String shop();
    }

    /** The page's log-in at the provider. */
    interface Page {

        /** What the provider knows the page as; without it there is no page where tokens are asked for. */
        Optional<String> clientId();

        /** Shared with the provider. */
        Optional<String> clientSecret();

        /** What sessions are encrypted by, the same for all replicas: 32 characters or more. */
        Optional<String> sessionSecret();
    }

    /** Whether anybody is asked who he is. */
    default boolean isOn() {
        return publicKey().isPresent() || provider().isPresent();
    }

    /** Whether people may log in on the page. */
    default boolean hasLogIn() {
        return page().clientId().isPresent();
    }
}
