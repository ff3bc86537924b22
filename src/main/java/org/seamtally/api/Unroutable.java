package org.seamtally.api;

import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.core.Response;

/**
 * Requests that the server itself gives up on before any resource is asked, such as one without a Host: its own answer
 * would be a page that speaks of the program's inside.
 */
@ApplicationScoped
public class Unroutable {

    void register(@Observes Router router) {
        router.route().order(Integer.MIN_VALUE).failureHandler(Unroutable::answerFailed);
    }

    private static void answerFailed(RoutingContext context) {
        Response.Status status = Response.Status.fromStatusCode(context.statusCode());
        boolean sendersFault = status != null && status.getFamily() == Response.Status.Family.CLIENT_ERROR;
        if (sendersFault && !context.response().ended()) {
            SameMachine.answer(context, Problems.report(status));
        } else {
            context.next();
        }
    }
}
