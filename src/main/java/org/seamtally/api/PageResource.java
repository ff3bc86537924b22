package org.seamtally.api;

import io.quarkus.vertx.http.Compressed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.seamtally.page.EstimatorPage;

/** The estimator's page. */
@Path("/")
public class PageResource {

    private final EstimatorPage page;

    PageResource(EstimatorPage page) {
        this.page = page;
    }

    @GET
    @Compressed
    @Produces(MediaType.TEXT_HTML + ";charset=utf-8")
    @Operation(hidden = true)
    public Response page() {
        return Response.ok(page.html())
                .header("Content-Security-Policy", EstimatorPage.CONTENT_SECURITY_POLICY)
                .header("X-Content-Type-Options", "nosniff")
                .header("Referrer-Policy", "no-referrer")
                // a newer program has a newer page
                .header("Cache-Control", "no-cache")
                .build();
    }
}
