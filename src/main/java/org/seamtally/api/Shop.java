package org.seamtally.api;

import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;

/** The shop that what is kept belongs to: the one that whoever asks comes from. */
@ApplicationScoped
public class Shop {

    /** The one there is as long as the service is open and asks nobody who he is. */
    static final String LOCAL = "local";

    // kept in columns of this length
    private static final int LONGEST = 100;

    /** Where an identity has it. */
    static final String ATTRIBUTE = "shop";

    private final SecurityIdentity asking;

    /** @param asking whoever sent the request under way */
    Shop(SecurityIdentity asking) {
        this.asking = asking;
    }

    /** Its name, of the request under way. */
    String name() {
        return of(asking).orElseThrow(() -> new IllegalStateException("nobody without a shop comes so far"));
    }

    /** The shop that somebody comes from. */
    static Optional<String> of(SecurityIdentity identity) {
        return Optional.ofNullable(identity.getAttribute(ATTRIBUTE));
    }

    /** Whether a token's claim names a shop. */
    static boolean isName(Object claim) {
        return claim instanceof String name
                && !name.isBlank()
                && name.length() <= LONGEST
                && name.chars().noneMatch(Character::isISOControl);
    }
}
