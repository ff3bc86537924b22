package org.seamtally.api;

import io.quarkus.runtime.ShutdownDelayInitiatedEvent;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Duration;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.wire.ProblemReport;

/**
 * From the moment the service is told to stop until it ends: readiness is down at once, and after a delay, if one is set,
 * nothing new is begun. What was begun is waited for by the framework, for quarkus.shutdown.timeout.
 */
@ApplicationScoped
public class Stopping {

    // behind what keeps other sites out, before anything is looked at
    private static final int ORDER = 950;

    // seconds: longer than a replica takes to start again
    private static final int RETRY_AFTER_S = 10;

    private final Duration delay;
    private volatile boolean told;
    private volatile long toldAt;

    Stopping(@ConfigProperty(name = "quarkus.shutdown.delay") Optional<Duration> delay) {
        this.delay = delay.orElse(Duration.ZERO);
    }

    void told(@Observes ShutdownDelayInitiatedEvent event) {
        toldAt = System.nanoTime();
        told = true;
    }

    /** Whether it was told to stop. */
    boolean isTold() {
        return told;
    }

    void register(@Observes Filters filters) {
        filters.register(this::check, ORDER);
    }

    private void check(RoutingContext context) {
        // probes and metrics are answered to the end
        if (!told
                || System.nanoTime() - toldAt < delay.toNanos()
                || context.request().path().startsWith("/q/")) {
            context.next();
            return;
        }
        context.response()
                .putHeader("Retry-After", Integer.toString(RETRY_AFTER_S))
                .putHeader("Connection", "close");
        SameMachine.hangUpSoon(context);
        context.request().resume();
        SameMachine.answer(
                context,
                ProblemReport.of(503, "stopping", "The service stops.", "Ask another replica, or again in a while."));
    }
}
