package org.seamtally.api;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.SecurityIdentityAugmentor;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashSet;
import java.util.Set;
import org.eclipse.microprofile.jwt.JsonWebToken;

/** Reads the shop off a token. One that names none may look after the service at most: nothing kept belongs to nobody. */
@ApplicationScoped
public class TokenShop implements SecurityIdentityAugmentor {

    private final String claim;

    TokenShop(AccessSettings settings) {
        this.claim = settings.claims().shop();
    }

    @Override
    public Uni<SecurityIdentity> augment(SecurityIdentity identity, AuthenticationRequestContext context) {
        return Uni.createFrom().item(of(identity));
    }

    private SecurityIdentity of(SecurityIdentity identity) {
        if (identity.isAnonymous()) {
            return identity;
        }
        Object shop = identity.getPrincipal() instanceof JsonWebToken token ? token.getClaim(claim) : null;
        if (Shop.isName(shop)) {
            return QuarkusSecurityIdentity.builder(identity)
                    .addAttribute(Shop.ATTRIBUTE, shop)
                    .build();
        }
        Set<String> left = new HashSet<>(identity.getRoles());
        left.retainAll(Set.of(Roles.OPERATOR));
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(identity.getPrincipal())
                .addCredentials(identity.getCredentials())
                .addAttributes(identity.getAttributes())
                .addRoles(left)
                .build();
    }
}
