package org.seamtally.api;

import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.seamtally.store.Backup;
import org.seamtally.wire.ProblemReport;

/**
 * A copy of the embedded database, for {@code seamtally backup}: its file is locked by the service that has it open, so
 * that the service itself must copy it. It is sent to whoever asks, and written to no place that a request names.
 */
@Path(BackupResource.PATH)
@Blocking
public class BackupResource {

    static final String PATH = "/q/backup";

    private static final String ZIP = "application/zip";

    private final Backup backup;
    private final OpenStreams streams;

    BackupResource(Backup backup, OpenStreams streams) {
        this.backup = backup;
        this.streams = streams;
    }

    /** POST, although nothing is changed: no link that is followed or fetched beforehand makes a copy of all prices. */
    @POST
    @Produces(ZIP)
    @RolesAllowed(Roles.OPERATOR)
    // a part of looking after the service, not of its API
    @Operation(hidden = true)
    public Response make(@Context UriInfo uri, @Context RoutingContext context) {
        Query.none(uri);
        return Response.ok(new StreamedAnswer(streams::begin, context, this::copyTo))
                .type(ZIP)
                .header(HttpHeaders.CACHE_CONTROL, "no-store")
                .build();
    }

    private void copyTo(OutputStream out) throws IOException {
        // for the service's own user alone; where it lies, java.io.tmpdir says
        java.nio.file.Path copy = Files.createTempFile("seamtally-backup", ".zip");
        try {
            if (!backup.writeTo(copy)) {
                throw new ProblemException(ProblemReport.of(
                        409,
                        "not-in-a-file",
                        "What is kept is not in a file of this service.",
                        "A backup of PostgreSQL is made by its own tools: pg_dump --format=custom --file=FILE URL."));
            }
            Files.copy(copy, out);
        } finally {
            Files.deleteIfExists(copy);
        }
    }
}
