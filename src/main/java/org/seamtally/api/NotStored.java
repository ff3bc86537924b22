package org.seamtally.api;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import java.util.List;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** What is kept changes, and is the shop's own business: no browser or proxy is to keep it besides. */
public class NotStored {

    private static final List<String> PATHS =
            List.of(BatchesResource.PATH, QuotesResource.PATH, PriceBooksResource.PATH);

    @ServerResponseFilter
    void say(ContainerRequestContext request, ContainerResponseContext response) {
        String path = request.getUriInfo().getPath();
        if (PATHS.stream().anyMatch(kept -> path.equals(kept) || path.startsWith(kept + "/"))) {
            response.getHeaders().putSingle(HttpHeaders.CACHE_CONTROL, "no-store");
        }
    }
}
