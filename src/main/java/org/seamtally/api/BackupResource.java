package org.seamtally.api;

import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.seamtally.kept.KeptCopy;
import org.seamtally.wire.ProblemReport;

/** A copy of all that is kept, of all shops. */
@Path("/v1/backup")
@Blocking
@RolesAllowed(Roles.OPERATOR)
@Tag(name = "operation", description = "For whoever looks after the service.")
public class BackupResource {

    private static final String GZIP = "application/gzip";

    private final KeptCopy copy;
    private final OpenStreams streams;

    BackupResource(KeptCopy copy, OpenStreams streams) {
        this.copy = copy;
        this.streams = streams;
    }

    @GET
    @Produces(GZIP)
    @Operation(
            operationId = "backUp",
            summary = "Copy all that is kept",
            description =
                    "Of the embedded database: quotes, price books and batches of all shops, as they are when it is asked"
                            + " for, while the service goes on. A new database is made from it with"
                            + " `seamtally.database.restore`. A copy that breaks off ends without its last chunk.")
    @APIResponse(
            responseCode = "200",
            description = "The copy.",
            content = @Content(mediaType = GZIP, schema = @Schema(type = SchemaType.STRING, format = "binary")))
    public Response backUp(@Context UriInfo uri, @Context RoutingContext context) {
        Query.none(uri);
        if (!copy.isTaken()) {
            throw new ProblemException(ProblemReport.of(
                    409,
                    "no-embedded-database",
                    "Only the embedded database is copied here.",
                    "What is kept here is on a database server: its own tools copy it."));
        }
        return Response.ok(new StreamedAnswer(streams::begin, context, copy::writeTo), GZIP)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"seamtally-kept.sql.gz\"")
                .build();
    }
}
