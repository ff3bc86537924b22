package org.seamtally.api;

import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.util.Locale;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.seamtally.wire.ProblemReport;

/** Turns whatever went wrong into problem details. */
public class Problems {

    /** The media type of problem details: RFC 9457. */
    static final String MEDIA_TYPE = "application/problem+json";

    private static final Logger LOG = Logger.getLogger(Problems.class);

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
    Response tooLarge(Body.TooLargeException e) {
        return Response.fromResponse(response(tooLargeReport()))
                .header("Connection", "close")
                .build();
    }

    /** The client went away, or its body broke off. */
    @ServerExceptionMapper
    Response brokenOff(IOException e) {
        return response(ProblemReport.of(400, "broken-off", "The body broke off.", null));
    }

    /** What the framework itself answers: unknown paths, methods and media types. */
    @ServerExceptionMapper
    Response http(WebApplicationException e) {
        Response answer = e.getResponse();
        Response.StatusType status = answer.getStatusInfo();
        if (status.getFamily() == Response.Status.Family.SERVER_ERROR) {
            LOG.error("request failed", e);
        }
        String title = status.getReasonPhrase();
        Response problem = response(ProblemReport.of(
                status.getStatusCode(), title.toLowerCase(Locale.ROOT).replace(' ', '-'), title + ".", null));
        String allow = answer.getHeaderString(HttpHeaders.ALLOW);
        return allow == null
                ? problem
                : Response.fromResponse(problem)
                        .header(HttpHeaders.ALLOW, allow)
                        .build();
    }

    @ServerExceptionMapper
    Response any(Exception e) {
        LOG.error("request failed", e);
        return response(ProblemReport.of(500, "internal", "Something is wrong with the program.", null));
    }
}
