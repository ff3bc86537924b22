package org.seamtally.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
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
import org.seamtally.kept.UnavailableException;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.RefusedException;

/** Turns whatever went wrong into problem details. */
public class Problems {

    /** The media type of problem details: RFC 9457. */
    static final String MEDIA_TYPE = "application/problem+json";

    // a database that is restarted is back within seconds; asking more often than the pool gives up on it tells nothing
    // new
    static final int RETRY_AFTER_S = 5;

    private static final Logger LOG = Logger.getLogger(Problems.class);

    private final Endpoints endpoints;

    Problems(Endpoints endpoints) {
        this.endpoints = endpoints;
    }

    static Response response(ProblemReport problem) {
        return response(problem, RETRY_AFTER_S);
    }

    private static Response response(ProblemReport problem, int retryAfterSeconds) {
        Response.ResponseBuilder answer = Response.status(problem.status())
                .type(MediaType.valueOf(MEDIA_TYPE))
                .entity(problem);
        return problem.status() == Response.Status.SERVICE_UNAVAILABLE.getStatusCode()
                ? answer.header(HttpHeaders.RETRY_AFTER, retryAfterSeconds).build()
                : answer.build();
    }

    /** 413: the body is larger than is taken. */
    static ProblemReport tooLargeReport() {
        return tooLarge("At most " + (WholeBodies.LARGEST >> 20) + " MiB are taken.");
    }

    /** 413, saying what is taken. */
    static ProblemReport tooLarge(String detail) {
        return ProblemReport.of(413, "too-large", "The body is too large.", detail);
    }

    /** 408, saying how long it may take. */
    static ProblemReport tooSlow(String detail) {
        return ProblemReport.of(408, "too-slow", "The body came too slowly.", detail);
    }

    /** 415. @param detail what is taken; null where the document says it all */
    static ProblemReport unsupportedMediaType(String detail) {
        ProblemReport plain = report(Response.Status.UNSUPPORTED_MEDIA_TYPE);
        return new ProblemReport(plain.type(), plain.title(), plain.status(), detail, null);
    }

    /** 404: there is no such thing kept. */
    static ProblemException notFound() {
        return new ProblemException(report(Response.Status.NOT_FOUND));
    }

    @ServerExceptionMapper
    Response problem(ProblemException e) {
        return response(e.problem(), e.retryAfterSeconds());
    }

    @ServerExceptionMapper
    Response nothingMore(NothingMoreException e) {
        return Response.noContent().build();
    }

    /** What is kept cannot be reached. */
    @ServerExceptionMapper
    Response unavailable(UnavailableException e) {
        LOG.warn("what is kept cannot be reached: " + e.getMessage());
        return problem(new ProblemException(
                ProblemReport.of(503, "unavailable", "What is kept cannot be reached now.", e.getMessage())));
    }

    /** A job file of which nothing can be made. */
    @ServerExceptionMapper
    Response refused(RefusedException e) {
        return response(e.problem());
    }

    @ServerExceptionMapper
    Response malformed(Multipart.MalformedException e) {
        return response(ProblemReport.of(
                400, "not-multipart", "The body is not multipart/form-data.", "It is none: " + e.getMessage() + "."));
    }

    @ServerExceptionMapper
    Response tooSlow(StreamBody.TooSlowException e) {
        return response(tooSlow("A line may take " + StreamBody.LONGEST_WAIT.toMinutes() + " minutes to arrive."));
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
                        .allow(endpoints.methods(uri.getPath()))
                        .build()
                : problem;
    }

    /** The framework answers OPTIONS by itself; which methods there are is told here alone. */
    @ServerResponseFilter
    void options(ContainerRequestContext request, ContainerResponseContext response) {
        if (!request.getMethod().equals(HttpMethod.OPTIONS) || response.getStatus() != 200) {
            return;
        }
        Set<String> allowed = endpoints.methods(request.getUriInfo().getPath());
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

    /** Nobody said who asks, or what he sent is not taken. */
    @ServerExceptionMapper({UnauthorizedException.class, AuthenticationFailedException.class})
    Response unknown(RoutingContext context) {
        return Response.fromResponse(response(report(Response.Status.UNAUTHORIZED)))
                .header(HttpHeaders.WWW_AUTHENTICATE, Entrance.challenge(context))
                .build();
    }

    @ServerExceptionMapper
    Response notAllowed(ForbiddenException e) {
        return response(notAllowed());
    }

    /** 403: whoever asks is known, and may not. */
    static ProblemReport notAllowed() {
        return ProblemReport.of(
                403,
                "not-allowed",
                "Your roles do not allow this.",
                "The token, or the log-in, has none of the roles that this needs, or names no shop.");
    }

    @ServerExceptionMapper
    Response any(Throwable e) {
        LOG.error("request failed", e);
        return response(ProblemReport.of(500, "internal", "Something is wrong with the program.", null));
    }
}
