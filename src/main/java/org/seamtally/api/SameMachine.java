package org.seamtally.api;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.Locale;
import java.util.Set;
import org.seamtally.wire.Json;
import org.seamtally.wire.ProblemReport;

/**
 * Keeps other web sites out: a browser will send their requests here too, from a page of theirs or, as long as the service
 * is open to its own machine, under a name of theirs (DNS rebinding). No other site is granted anything.
 */
@ApplicationScoped
public class SameMachine {

    private static final Set<String> NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

    // before everything else that the framework puts in front of resources
    private static final int FIRST = 1000;

    // on one machine an answer is read within this many times over
    private static final long LINGER_MS = 2_000;

    private final boolean open;

    SameMachine(AccessSettings access) {
        this.open = !access.isOn();
    }

    void register(@Observes Filters filters) {
        filters.register(this::check, FIRST);
    }

    private void check(RoutingContext context) {
        HttpServerRequest request = context.request();
        if (!open && request.isSSL()) {
            // seconds: a browser that came by TLS once comes by nothing else for a year
            context.response().putHeader("Strict-Transport-Security", "max-age=31536000");
        }
        String host = request.authority() == null ? null : request.authority().toString();
        if (open && !isHere(host)) {
            refuse(context, "foreign-host", "The service answers to localhost, 127.0.0.1 and [::1] alone.");
        } else if (!isOwnOrAbsent(request.getHeader("Origin"), host)) {
            refuse(context, "foreign-origin", "Pages of other origins may not ask here.");
        } else if ("cross-site".equalsIgnoreCase(request.getHeader("Sec-Fetch-Site")) && !isWayIn(request)) {
            refuse(context, "foreign-origin", "Pages of other sites may not ask here.");
        } else if (!JobFileRequests.isOne(request) && declaredLength(request) > WholeBodies.LARGEST) {
            context.response().putHeader("Connection", "close");
            hangUpSoon(context);
            answer(context, Problems.tooLargeReport());
        } else {
            context.next();
        }
    }

    /** The name in a Host header, its port left out. */
    private static boolean isHere(String host) {
        if (host == null) {
            return false;
        }
        int port = host.lastIndexOf(':');
        String name = port > host.lastIndexOf(']') ? host.substring(0, port) : host;
        return NAMES.contains(name.toLowerCase(Locale.ROOT));
    }

    /** Whether a page was served by this very service: another port is another program, whoever wrote it. */
    private static boolean isOwnOrAbsent(String origin, String host) {
        return origin == null
                || origin.equalsIgnoreCase("http://" + host)
                || origin.equalsIgnoreCase("https://" + host);
    }

    /** Whether somebody comes to the page by a link, or back from where he logged in: that shows it, and does nothing. */
    private boolean isWayIn(HttpServerRequest request) {
        return !open
                && request.method() == HttpMethod.GET
                && request.path().equals(PageResource.PATH)
                && "navigate".equalsIgnoreCase(request.getHeader("Sec-Fetch-Mode"))
                && "document".equalsIgnoreCase(request.getHeader("Sec-Fetch-Dest"));
    }

    /** Bytes of the body; the largest number where what is sent is none; 0 where it is not told. */
    static long declaredLength(HttpServerRequest request) {
        String length = request.getHeader("Content-Length");
        try {
            return length == null ? 0 : Long.parseLong(length.strip());
        } catch (NumberFormatException e) {
            return Long.MAX_VALUE;
        }
    }

    /**
     * Cuts the connection after a while: cut at once, what the sender has still under way would cost him the answer;
     * never cut, he could take for ever to send the rest.
     */
    static void hangUpSoon(RoutingContext context) {
        context.vertx()
                .setTimer(LINGER_MS, timer -> context.request().connection().close());
    }

    private static void refuse(RoutingContext context, String word, String detail) {
        answer(context, ProblemReport.of(403, word, "Not from there.", detail));
    }

    /** Answers with a problem in front of all resources. */
    static void answer(RoutingContext context, ProblemReport problem) {
        try {
            context.response()
                    .setStatusCode(problem.status())
                    .putHeader("Content-Type", Problems.MEDIA_TYPE)
                    .end(Json.mapper().writeValueAsString(RequestId.named(problem, context)));
        } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
