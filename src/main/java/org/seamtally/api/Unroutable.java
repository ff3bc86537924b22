package org.seamtally.api;

import io.quarkus.oidc.OIDCException;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import org.jboss.logging.Logger;
import org.seamtally.wire.ProblemReport;

/**
 * Requests that the server itself gives up on before any resource is asked, such as one without a Host: its own answer
 * would be a page that speaks of the program's inside. So too where the provider that checks tokens is away.
 */
@ApplicationScoped
public class Unroutable {

    private static final Logger LOG = Logger.getLogger(Unroutable.class);

    void register(@Observes Router router) {
        router.route().order(Integer.MIN_VALUE).failureHandler(Unroutable::answerFailed);
    }

    private static void answerFailed(RoutingContext context) {
        Response.Status status = Response.Status.fromStatusCode(context.statusCode());
        boolean sendersFault = status != null && status.getFamily() == Response.Status.Family.CLIENT_ERROR;
        if (sendersFault && !context.response().ended()) {
            SameMachine.answer(context, Problems.report(status));
        } else if (context.failure() instanceof OIDCException
                && !context.response().ended()) {
            LOG.warn("tokens cannot be checked: " + context.failure().getMessage());
            context.response().putHeader(HttpHeaders.RETRY_AFTER, String.valueOf(Problems.RETRY_AFTER_S));
            SameMachine.answer(
                    context,
                    ProblemReport.of(
                            503,
                            "unavailable",
                            "Tokens cannot be checked now.",
                            "The provider whose keys check them cannot be reached."));
        } else {
            context.next();
        }
    }
}
