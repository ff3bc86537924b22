package org.seamtally.api;

import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.quarkus.vertx.http.runtime.security.QuarkusHttpUser;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.wire.ProblemReport;

/**
 * Keeps one subject of a token from taking the service from all others. Whoever is not known by a token has no limit: where
 * the service is open everybody is one and the same.
 */
@ApplicationScoped
public class SubjectRates {

    // the framework finds out who asks in a filter of its own, of 200, and refuses whoever may not in one of 100
    private static final int KNOWN = 50;

    private final Rates rates;

    SubjectRates(
            @ConfigProperty(name = "seamtally.requests.per-second") double perSecond,
            @ConfigProperty(name = "seamtally.requests.burst") int burst) {
        rates = new Rates(perSecond, burst, System::nanoTime);
    }

    void register(@Observes Filters filters) {
        filters.register(this::check, KNOWN);
    }

    private void check(RoutingContext context) {
        long wait = asking(context)
                .map(asking -> rates.take(asking.getPrincipal().getName()))
                .orElse(0L);
        if (wait == 0) {
            context.next();
            return;
        }
        context.response().putHeader("Retry-After", Long.toString(wait));
        context.request().resume();
        SameMachine.answer(context, tooManyReport());
    }

    /** Who asks; empty where nobody said. */
    static Optional<SecurityIdentity> asking(RoutingContext context) {
        return context.user() instanceof QuarkusHttpUser user
                ? Optional.of(user.getSecurityIdentity()).filter(asking -> !asking.isAnonymous())
                : Optional.empty();
    }

    static ProblemReport tooManyReport() {
        return ProblemReport.of(
                429, "too-many-requests", "You ask more often than you may.", "Ask again after a while.");
    }
}
