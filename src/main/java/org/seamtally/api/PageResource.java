package org.seamtally.api;

import io.quarkus.vertx.http.Compressed;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.seamtally.page.EstimatorPage;

/** The estimator's page. */
@Path("/")
@PermitAll
public class PageResource {

    private final EstimatorPage page;
    private final boolean on;

    PageResource(EstimatorPage page, AccessSettings access) {
        this.page = page;
        this.on = !access.isOn() || access.hasLogIn();
    }

    @GET
    @Compressed
    @Produces(MediaType.TEXT_HTML + ";charset=utf-8")
    @Operation(hidden = true)
    public Response page() {
        return Response.status(on ? Response.Status.OK : Response.Status.FORBIDDEN)
                .entity(on ? page.html() : page.off())
                .header("Content-Security-Policy", EstimatorPage.CONTENT_SECURITY_POLICY)
                // a newer program has a newer page
                .header("Cache-Control", "no-cache")
                .build();
    }
}
