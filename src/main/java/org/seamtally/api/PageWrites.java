package org.seamtally.api;

import io.quarkus.oidc.IdTokenCredential;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.Response;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.Optional;
import java.util.Set;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.seamtally.wire.ProblemReport;

/**
 * Writes by somebody who is logged in on the page, whose browser sends the session with whatever asks: they bring a token
 * that the page alone has been given (CSRF). It is a keyed digest of who is logged in, so that none is kept, every replica
 * knows it, and one that was planted or is another's is not taken. Bearers of tokens need none: no browser sends theirs by
 * itself.
 */
@ApplicationScoped
public class PageWrites {

    /** Where the page finds it. */
    static final String COOKIE = "csrf-token";

    /** Where it sends it. */
    static final String HEADER = "X-CSRF-Token";

    private static final String DIGEST = "HmacSHA256";

    private static final Set<String> READING = Set.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.OPTIONS);

    private final SecurityIdentity asking;
    private final Optional<SecretKeySpec> key;

    PageWrites(SecurityIdentity asking, AccessSettings access) {
        this.asking = asking;
        this.key = access.hasLogIn()
                ? access.page()
                        .sessionSecret()
                        .or(access.page()::clientSecret)
                        .map(secret -> new SecretKeySpec(secret.getBytes(StandardCharsets.UTF_8), DIGEST))
                : Optional.empty();
    }

    /** The token of whoever is logged in; empty where nobody is. */
    Optional<String> token() {
        return key.isPresent()
                        && asking.getCredential(IdTokenCredential.class) != null
                        && asking.getPrincipal() instanceof JsonWebToken person
                ? Optional.of(token(key.get(), person))
                : Optional.empty();
    }

    /** Hands it to the page, whose scripts read it; it goes to no other site, and ends with the browser. */
    static NewCookie cookie(String token) {
        return new NewCookie.Builder(COOKIE)
                .value(token)
                .path(PageResource.PATH)
                .sameSite(NewCookie.SameSite.STRICT)
                .build();
    }

    private static String token(SecretKeySpec key, JsonWebToken person) {
        try {
            Mac mac = Mac.getInstance(DIGEST);
            mac.init(key);
            // what it is for stands in front: the same key encrypts sessions
            String text = HEADER + "\n" + person.getIssuer() + "\n" + person.getSubject();
            return Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java has " + DIGEST, e);
        }
    }

    /** @return null where the request may go on */
    @ServerRequestFilter
    Response check(ContainerRequestContext request) {
        if (key.isEmpty() || READING.contains(request.getMethod())) {
            return null;
        }
        Optional<String> expected = token();
        return expected.isEmpty() || isSame(expected.get(), request.getHeaderString(HEADER))
                ? null
                : Problems.response(
                        ProblemReport.of(
                                403,
                                "not-from-the-page",
                                "The request does not come from the page.",
                                "Whoever is logged in changes things from the page alone; programs send a token of their own."));
    }

    /** Takes as long wherever the two differ. */
    private static boolean isSame(String expected, String given) {
        return given != null
                && MessageDigest.isEqual(
                        expected.getBytes(StandardCharsets.US_ASCII), given.getBytes(StandardCharsets.UTF_8));
    }
}
