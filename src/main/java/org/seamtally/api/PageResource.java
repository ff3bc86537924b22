package org.seamtally.api;

import io.quarkus.vertx.http.Compressed;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.NewCookie;
import jakarta.ws.rs.core.Response;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.seamtally.page.EstimatorPage;

/** The estimator's page. */
@Path(PageResource.PATH)
@PermitAll
public class PageResource {

    static final String PATH = "/";

    private final EstimatorPage page;
    private final PageWrites writes;
    private final boolean on;

    PageResource(EstimatorPage page, PageWrites writes, AccessSettings access) {
        this.page = page;
        this.writes = writes;
        this.on = !access.isOn() || access.hasLogIn();
    }

    @GET
    @Compressed
    @Produces(MediaType.TEXT_HTML + ";charset=utf-8")
    @Operation(hidden = true)
    public Response page() {
        Optional<String> csrf = writes.token();
        return Response.status(on ? Response.Status.OK : Response.Status.FORBIDDEN)
                .entity(on ? page.html() : page.off())
                .header("Content-Security-Policy", EstimatorPage.CONTENT_SECURITY_POLICY)
                // a newer program has a newer page; one that brings somebody's token is his alone
                .header("Cache-Control", csrf.isPresent() ? "no-store" : "no-cache")
                .cookie(csrf.map(PageWrites::cookie).stream().toArray(NewCookie[]::new))
                .build();
    }
}
