package org.seamtally.api;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Stands in front of all that is worked out while the caller waits: sends away what would only wait, before its body is
 * read or anybody is asked who he is, and counts by endpoint what became of each request.
 */
@ApplicationScoped
public class EstimateDoor {

    // behind the checks that cost nothing, before those that cost something
    private static final int ORDER = 900;

    // bytes: more than this is not read to its end only to keep a connection
    private static final long DRAINED = 256 << 10;

    /** What becomes of a request. */
    enum Outcome {
        ANSWERED,
        REFUSED,
        RATE_LIMITED,
        SHED,
        FAILED;

        static Outcome of(int status) {
            return switch (status) {
                case 429 -> RATE_LIMITED;
                case 503 -> SHED;
                default -> status < 400 ? ANSWERED : status < 500 ? REFUSED : FAILED;
            };
        }

        String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    private record Endpoint(Pattern path, String name) {

        WaitingLine line(Admission admission) {
            return name.startsWith("quotes") ? admission.quotes() : admission.estimates();
        }
    }

    // a price book is kept as it is: nothing is worked out
    private static final List<Endpoint> ENDPOINTS = Arrays.stream(RequestBodies.values())
            .filter(body -> body != RequestBodies.PRICE_BOOKS)
            .map(body -> new Endpoint(
                    Pattern.compile(body.path().replaceAll("\\{[^}]+}", "[^/]+") + "/?"),
                    body.path().substring("/v1/".length())))
            .toList();

    private final Admission admission;
    private final Map<Endpoint, Map<Outcome, Counter>> counters = new HashMap<>();

    EstimateDoor(Admission admission, MeterRegistry metrics) {
        this.admission = admission;
        // there from the start, at nought: a rate of what is not there is no rate
        for (Endpoint endpoint : ENDPOINTS) {
            Map<Outcome, Counter> byOutcome = new EnumMap<>(Outcome.class);
            for (Outcome outcome : Outcome.values()) {
                byOutcome.put(outcome, counter(endpoint, outcome, metrics));
            }
            counters.put(endpoint, byOutcome);
        }
    }

    void register(@Observes Filters filters) {
        filters.register(this::pass, ORDER);
    }

    private void pass(RoutingContext context) {
        Endpoint endpoint = asked(context.request());
        if (endpoint == null) {
            context.next();
            return;
        }
        Map<Outcome, Counter> counted = counters.get(endpoint);
        context.addEndHandler(ended ->
                counted.get(Outcome.of(context.response().getStatusCode())).increment());
        if (endpoint.line(admission).isFull()) {
            context.response().putHeader("Retry-After", Integer.toString(WaitingLine.RETRY_AFTER_S));
            if (SameMachine.declaredLength(context.request()) > DRAINED) {
                context.response().putHeader("Connection", "close");
                SameMachine.hangUpSoon(context);
            }
            // what comes is read and forgotten: the sender gets his answer, and may ask again over the same connection
            context.request().resume();
            SameMachine.answer(context, WaitingLine.busyReport());
        } else {
            context.next();
        }
    }

    /** The endpoint, where something is to be worked out; null where not, and for job files, which have limits of their own. */
    private static Endpoint asked(HttpServerRequest request) {
        if (request.method() != HttpMethod.POST || JobFileRequests.isOne(request)) {
            return null;
        }
        String path = request.path();
        for (Endpoint endpoint : ENDPOINTS) {
            if (endpoint.path.matcher(path).matches()) {
                return endpoint;
            }
        }
        return null;
    }

    private static Counter counter(Endpoint endpoint, Outcome outcome, MeterRegistry metrics) {
        return Counter.builder("seamtally.estimates")
                .description("Requests for what is worked out at once, by what became of them")
                .tag("endpoint", endpoint.name)
                .tag("outcome", outcome.word())
                .register(metrics);
    }
}
