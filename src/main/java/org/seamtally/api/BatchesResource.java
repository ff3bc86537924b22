package org.seamtally.api;

import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.sse.OutboundSseEvent;
import java.io.IOException;
import java.io.InputStream;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.seamtally.batch.Batches;
import org.seamtally.batch.Form;
import org.seamtally.batch.KeptLines;
import org.seamtally.batch.Received;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.BatchAnswer;
import org.seamtally.wire.BatchList;
import org.seamtally.wire.BatchSummaryAnswer;
import org.seamtally.wire.JobAnswer;
import org.seamtally.wire.Json;
import org.seamtally.wire.RefusedException;

/** Batches: job files that are kept, worked on by whoever has time, and asked for later. */
@Path(BatchesResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@RolesAllowed({Roles.ESTIMATOR, Roles.PRICE_KEEPER, Roles.READER, Roles.MACHINE})
@Tag(name = "batches", description = "Job files that are kept, worked on in the background, and asked for later.")
public class BatchesResource {

    static final String PATH = "/v1/batches";

    private final Batches batches;
    private final Shop shop;
    private final BatchEvents events;
    private final OpenStreams streams;
    private final InstantSource clock;

    BatchesResource(Batches batches, Shop shop, BatchEvents events, OpenStreams streams, InstantSource clock) {
        this.batches = batches;
        this.shop = shop;
        this.events = events;
        this.streams = streams;
        this.clock = clock;
    }

    @POST
    @RolesAllowed({Roles.ESTIMATOR, Roles.MACHINE})
    @Consumes({StreamTypes.NDJSON, StreamTypes.CSV, StreamTypes.PARTS})
    @Operation(
            operationId = "createBatch",
            summary = "Keep a job file and work on it",
            description = "The file is kept before this answers, and worked on after that, by every replica that has"
                    + " time. A frame's fault is its own; a file of which nothing can be made is refused, and nothing of it"
                    + " is kept.")
    @RequestBody(required = true, description = "The job file, with the shop's settings beside it where they are sent.")
    @APIResponse(
            responseCode = "202",
            description = "The batch is kept. A request with the same Idempotency-Key and the same body answers alike.",
            content = @Content(schema = @Schema(implementation = BatchAnswer.class)))
    public Response create(InputStream body, @Context UriInfo uri, @Context HttpHeaders headers)
            throws IOException, RefusedException {
        Query.OfBatch asked = Query.batch(uri);
        String key = IdempotencyKey.of(headers);
        OpenStreams.Place place = streams.begin();
        try (place) {
            Upload upload = Upload.of(StreamTypes.of(headers), new StreamBody(body, clock));
            return answer(batches.receive(
                    shop.name(), asked.name(), asked.units(), upload.form(), upload.settings(), upload.jobs(), key));
        }
    }

    private static Response answer(Received received) throws IOException {
        if (received instanceof Received.Accepted accepted) {
            return accepted(accepted.answer());
        }
        if (received instanceof Received.Replayed replayed) {
            return accepted(replayed.answer());
        }
        throw received instanceof Received.InFlight ? IdempotencyKey.inFlight() : IdempotencyKey.used();
    }

    private static Response accepted(byte[] answer) throws IOException {
        String id = Json.mapper().readTree(answer).path("id").asText();
        return Response.accepted(answer)
                .type(MediaType.APPLICATION_JSON_TYPE)
                .header(HttpHeaders.LOCATION, PATH + "/" + id)
                .build();
    }

    @GET
    @Operation(operationId = "listBatches", summary = "Batches", description = "Kept batches, the latest first.")
    public BatchList list(@Context UriInfo uri) {
        Query.Stretch asked = Query.stretch(uri);
        // one more than asked for: whether anything follows
        List<BatchAnswer> found = batches.list(shop.name(), asked.limit() + 1, asked.after());
        boolean more = found.size() > asked.limit();
        List<BatchAnswer> items = more ? found.subList(0, asked.limit()) : found;
        return new BatchList(items, more ? items.get(items.size() - 1).id() : null);
    }

    @GET
    @Path("/{id}")
    @Operation(
            operationId = "readBatch",
            summary = "How far a batch is",
            description = "State, counts, pace and time left.")
    public BatchAnswer status(@PathParam("id") String id, @Context UriInfo uri) {
        Query.none(uri);
        return status(Ids.kept(id));
    }

    private BatchAnswer status(UUID id) {
        return batches.status(shop.name(), id).orElseThrow(Problems::notFound);
    }

    @GET
    @Path("/{id}/events")
    @Produces(MediaType.SERVER_SENT_EVENTS)
    @Operation(
            operationId = "watchBatch",
            summary = "Watch a batch",
            description = "Server-sent events: what reading the batch answers, as each event's data, at once and after"
                    + " that whenever it has changed, at most once a second; comments in between show that the connection"
                    + " lives. The stream ends after the event that says that the batch is done or cancelled, or when the"
                    + " batch is removed; who asks again with that event's id in Last-Event-ID is answered 204.")
    @APIResponse(
            responseCode = "200",
            description = "Events.",
            content =
                    @Content(
                            mediaType = MediaType.SERVER_SENT_EVENTS,
                            schema =
                                    @Schema(
                                            type = SchemaType.STRING,
                                            description = "Events; the data of each is a BatchAnswer.")))
    public Multi<OutboundSseEvent> watch(
            @PathParam("id") String id, @Context UriInfo uri, @Context HttpHeaders headers) {
        Query.none(uri);
        UUID batch = Ids.kept(id);
        BatchAnswer now = status(batch);
        if (BatchEvents.isEnd(headers.getHeaderString("Last-Event-ID")) && BatchEvents.isEnded(now)) {
            throw new NothingMoreException();
        }
        return events.of(shop.name(), batch, now);
    }

    @GET
    @Path("/{id}/results")
    @Produces({StreamTypes.NDJSON, StreamTypes.CSV})
    @Operation(
            operationId = "readBatchResults",
            summary = "A batch's results",
            description =
                    "A line a frame, in the order of the file, up to the first that is not worked on yet; the last"
                            + " line is the trailer, which says whether that is all. An answer without it was cut.")
    @APIResponse(responseCode = "200", description = "The results.")
    public Response results(
            @PathParam("id") String id, @Context UriInfo uri, @Context Request request, @Context RoutingContext context)
            throws RefusedException {
        UnitSystem units = Query.unitsOrNull(uri);
        Form form = StreamTypes.asked(request);
        return lines(batches.results(shop.name(), Ids.kept(id), form, units), StreamTypes.answered(form), context);
    }

    @GET
    @Path("/{id}/refusals")
    @Produces(StreamTypes.NDJSON)
    @Operation(
            operationId = "readBatchRefusals",
            summary = "A batch's refusals",
            description = "The results of those frames alone that were refused.")
    @APIResponse(
            responseCode = "200",
            description = "The refusals, and the trailer.",
            content = @Content(schema = @Schema(implementation = JobAnswer.class)))
    public Response refusals(@PathParam("id") String id, @Context UriInfo uri, @Context RoutingContext context) {
        Query.none(uri);
        return lines(batches.refusals(shop.name(), Ids.kept(id)), StreamTypes.NDJSON, context);
    }

    private Response lines(Optional<KeptLines> found, String type, RoutingContext context) {
        KeptLines lines = found.orElseThrow(Problems::notFound);
        StreamingOutput all = new StreamedAnswer(streams::begin, context, lines::writeTo);
        return Response.ok(all).type(type).build();
    }

    @GET
    @Path("/{id}/summary")
    @Operation(
            operationId = "summarizeBatch",
            summary = "What a batch adds up to",
            description = "Totals of filler, gas by where it goes, hours and money of the frames that are done, and the"
                    + " dearest of them.")
    public BatchSummaryAnswer summary(@PathParam("id") String id, @Context UriInfo uri) {
        Query.none(uri);
        return batches.summary(shop.name(), Ids.kept(id)).orElseThrow(Problems::notFound);
    }

    @DELETE
    @RolesAllowed({Roles.ESTIMATOR, Roles.MACHINE})
    @Path("/{id}")
    @Operation(
            operationId = "deleteBatch",
            summary = "Cancel or remove a batch",
            description =
                    "Cancels a batch that has not ended: what is done of it stays, and can be asked for. Removes one"
                            + " that has, with all that belongs to it.")
    @APIResponse(
            responseCode = "202",
            description = "It had not ended, and is cancelled.",
            content = @Content(schema = @Schema(implementation = BatchAnswer.class)))
    @APIResponse(responseCode = "204", description = "It had ended, and is removed.")
    public Response delete(@PathParam("id") String id, @Context UriInfo uri) {
        Query.none(uri);
        UUID batch = Ids.kept(id);
        return switch (batches.remove(shop.name(), batch)) {
            case CANCELLED -> Response.accepted(status(batch)).build();
            case REMOVED -> Response.noContent().build();
            case UNKNOWN -> throw Problems.notFound();
        };
    }
}
