package org.seamtally.api;

import io.quarkus.oidc.runtime.OidcAuthenticationMechanism;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpCredentialTransport;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Alternative;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.util.Set;

/**
 * Finds out who asks: as long as the service is open nobody is asked, and whoever is there may do everything; otherwise a
 * token tells, or the page's session.
 */
@Alternative
@Priority(1)
@ApplicationScoped
public class Entrance implements HttpAuthenticationMechanism {

    private static final String SCHEME = "Bearer";

    private static final SecurityIdentity ANYONE_HERE = QuarkusSecurityIdentity.builder()
            .setPrincipal(new QuarkusPrincipal("anyone on this machine"))
            .addRoles(Roles.ALL)
            .addAttribute(Shop.ATTRIBUTE, Shop.LOCAL)
            .setAnonymous(true)
            .build();

    private final AccessSettings settings;
    private final OidcAuthenticationMechanism tokens;

    Entrance(AccessSettings settings, OidcAuthenticationMechanism tokens) {
        this.settings = settings;
        this.tokens = tokens;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext context, IdentityProviderManager identities) {
        return settings.isOn()
                ? tokens.authenticate(context, identities)
                : Uni.createFrom().item(ANYONE_HERE);
    }

    /** Whoever comes to the page is sent to log in; whoever asks for anything else is told that he is not known. */
    @Override
    public Uni<Boolean> sendChallenge(RoutingContext context) {
        if (isForLogIn(context)) {
            return tokens.sendChallenge(context);
        }
        context.response().putHeader(HttpHeaders.WWW_AUTHENTICATE, challenge(context));
        SameMachine.answer(context, Problems.report(Response.Status.UNAUTHORIZED));
        return Uni.createFrom().item(true);
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext context) {
        return isForLogIn(context)
                ? tokens.getChallenge(context)
                : Uni.createFrom().item(new ChallengeData(401, HttpHeaders.WWW_AUTHENTICATE, challenge(context)));
    }

    private boolean isForLogIn(RoutingContext context) {
        return settings.hasLogIn() && context.request().path().equals(PageResource.PATH);
    }

    /** RFC 6750, 3.1: a token that was sent and is not taken is told from one that is missing, and no more is told of it. */
    static String challenge(RoutingContext context) {
        return SCHEME
                + (context.request().getHeader(HttpHeaders.AUTHORIZATION) == null ? "" : " error=\"invalid_token\"");
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return tokens.getCredentialTypes();
    }

    @Override
    public Uni<HttpCredentialTransport> getCredentialTransport(RoutingContext context) {
        return tokens.getCredentialTransport(context);
    }
}
