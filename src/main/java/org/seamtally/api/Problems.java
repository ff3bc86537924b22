package org.seamtally.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.lang.annotation.Annotation;
import java.util.Locale;
import java.util.Set;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.seamtally.wire.ProblemReport;

/** Turns whatever went wrong into problem details. */
public class Problems {

    /** The media type of problem details: RFC 9457. */
    static final String MEDIA_TYPE = "application/problem+json";

    private static final Logger LOG = Logger.getLogger(Problems.class);

    private final AllowedMethods methods;

    Problems(AllowedMethods methods) {
        this.methods = methods;
    }

    static Response response(ProblemReport problem) {
        return Response.status(problem.status())
                .type(MediaType.valueOf(MEDIA_TYPE))
                .entity(problem)
                .build();
    }

    /** 413: the body is larger than is taken. */
    static ProblemReport tooLargeReport() {
        return ProblemReport.of(
                413, "too-large", "The body is too large.", "At most " + (Body.LARGEST >> 20) + " MiB are taken.");
    }

    @ServerExceptionMapper
    Response problem(ProblemException e) {
        return response(e.problem());
    }

    @ServerExceptionMapper
    Response tooLarge(Body.TooLargeException e, RoutingContext context) {
        SameMachine.hangUpSoon(context);
        return Response.fromResponse(response(tooLargeReport()))
                .header("Connection", "close")
                .build();
    }

    /** The client went away, or its body broke off; an answer that cannot be written is our own fault. */
    @ServerExceptionMapper
    Response brokenOff(IOException e) {
        if (e instanceof JsonProcessingException) {
            return any(e);
        }
        return response(ProblemReport.of(400, "broken-off", "The body broke off.", null));
    }

    /** What the framework itself answers: unknown paths, methods and media types. */
    @ServerExceptionMapper
    Response http(WebApplicationException e, UriInfo uri) {
        Response answer = e.getResponse();
        Response.StatusType status = answer.getStatusInfo();
        if (status.getFamily() == Response.Status.Family.SERVER_ERROR) {
            LOG.error("request failed", e);
        }
        Response problem = response(report(status));
        return status.getStatusCode() == Response.Status.METHOD_NOT_ALLOWED.getStatusCode()
                ? Response.fromResponse(problem)
                        .allow(methods.at(uri.getPath()))
                        .build()
                : problem;
    }

    /** The framework answers OPTIONS by itself; which methods there are is told here alone. */
    @ServerResponseFilter
    void options(ContainerRequestContext request, ContainerResponseContext response) {
        if (!request.getMethod().equals(HttpMethod.OPTIONS) || response.getStatus() != 200) {
            return;
        }
        Set<String> allowed = methods.at(request.getUriInfo().getPath());
        if (allowed.isEmpty()) {
            response.getHeaders().remove(HttpHeaders.ALLOW);
            response.setStatus(404);
            response.setEntity(report(Response.Status.NOT_FOUND), new Annotation[0], MediaType.valueOf(MEDIA_TYPE));
        } else {
            response.getHeaders().putSingle(HttpHeaders.ALLOW, String.join(", ", allowed));
        }
    }

    /** The words of HTTP itself. */
    static ProblemReport report(Response.StatusType status) {
        String title = status.getReasonPhrase();
        return ProblemReport.of(
                status.getStatusCode(), title.toLowerCase(Locale.ROOT).replace(' ', '-'), title + ".", null);
    }

    @ServerExceptionMapper
    Response any(Exception e) {
        LOG.error("request failed", e);
        return response(ProblemReport.of(500, "internal", "Something is wrong with the program.", null));
    }
}
