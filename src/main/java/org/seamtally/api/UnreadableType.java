package org.seamtally.api;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;

/**
 * Refuses a body whose Content-Type is no media type at all, such as {@code ;;;}: the framework, where it chooses between
 * endpoints by it, would take that for a fault of the program.
 */
@ApplicationScoped
public class UnreadableType {

    // who may ask at all is looked at before what he sends
    private static final int AFTER_SAME_MACHINE = 900;

    void register(@Observes Filters filters) {
        filters.register(UnreadableType::check, AFTER_SAME_MACHINE);
    }

    private static void check(RoutingContext context) {
        String type = context.request().getHeader(HttpHeaders.CONTENT_TYPE);
        if (type == null || isReadable(type)) {
            context.next();
        } else {
            SameMachine.answer(context, Problems.unsupportedMediaType(null));
        }
    }

    private static boolean isReadable(String type) {
        try {
            MediaType.valueOf(type);
            return true;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
