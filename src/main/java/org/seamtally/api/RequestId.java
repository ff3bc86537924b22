package org.seamtally.api;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.container.ContainerResponseContext;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.logging.MDC;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.seamtally.wire.ProblemReport;

/**
 * A name for each request, the same in the answer's {@value #HEADER} header, in a problem's {@code instance} and in every
 * line that is logged about it: the caller's own where it sent a fit one, its trace's by W3C Trace Context where it sent
 * that, and otherwise a new one.
 */
@ApplicationScoped
public class RequestId {

    static final String HEADER = "X-Request-Id";

    /** The word under which log lines have it. */
    static final String LOGGED_AS = "requestId";

    // before all else that stands in front of resources: their refusals have a name too
    private static final int FIRST = 2000;

    // what may stand in a log, in a header and in a reference as it is; as long as any usual id
    private static final Pattern FIT = Pattern.compile("[A-Za-z0-9._-]{1,64}");

    // W3C Trace Context, 3.2: version, trace id, parent id, flags; an id of noughts is none
    private static final Pattern TRACE =
            Pattern.compile("(?!ff)[0-9a-f]{2}-((?!0{32})[0-9a-f]{32})-(?!0{16})[0-9a-f]{16}-[0-9a-f]{2}(-.*)?");

    private static final String KEY = RequestId.class.getName();

    private final Supplier<String> fresh = () -> UUID.randomUUID().toString();

    void register(@Observes Filters filters) {
        filters.register(this::name, FIRST);
    }

    private void name(RoutingContext context) {
        String id = of(context.request().getHeader(HEADER), context.request().getHeader("traceparent"), fresh);
        context.put(KEY, id);
        context.response().putHeader(HEADER, id);
        MDC.put(LOGGED_AS, id);
        context.next();
    }

    /**
     * The name of a request.
     *
     * @param given by the caller; null where none was sent
     * @param trace that the request belongs to; null where none was sent
     * @param fresh makes one that no other request has
     */
    static String of(String given, String trace, Supplier<String> fresh) {
        if (given != null && FIT.matcher(given).matches()) {
            return given;
        }
        if (trace != null) {
            Matcher parts = TRACE.matcher(trace);
            // the first version has four parts and no more
            if (parts.matches() && !(trace.startsWith("00-") && parts.group(2) != null)) {
                return parts.group(1);
            }
        }
        return fresh.get();
    }

    /** The problem with the name of the request that it is about. */
    static ProblemReport named(ProblemReport problem, RoutingContext context) {
        String id = context.get(KEY);
        // a request that the server itself gave up on has been given no name
        return id == null ? problem : problem.about("/requests/" + id);
    }

    @ServerResponseFilter
    void name(ContainerResponseContext response, RoutingContext context) {
        if (response.getEntity() instanceof ProblemReport problem) {
            response.setEntity(named(problem, context));
        }
    }
}
