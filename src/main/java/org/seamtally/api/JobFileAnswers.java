package org.seamtally.api;

import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** What answers to job files have in common. */
public class JobFileAnswers {

    /** A body that was refused is not read to its end, and might have none: its connection serves no other request. */
    @ServerResponseFilter
    void hangUpOnTheRest(ContainerResponseContext answer, RoutingContext context) {
        HttpServerRequest request = context.request();
        if (answer.getStatus() >= 400 && JobFileRequests.isOne(request) && !request.isEnded()) {
            answer.getHeaders().putSingle("Connection", "close");
            SameMachine.hangUpSoon(context);
        }
    }
}
