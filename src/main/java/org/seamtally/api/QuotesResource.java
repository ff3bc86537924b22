package org.seamtally.api;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.UUID;
import java.util.function.IntPredicate;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.DifferenceAnswer;
import org.seamtally.wire.Hrefs;
import org.seamtally.wire.QuoteAnswer;
import org.seamtally.wire.QuoteList;
import org.seamtally.wire.QuoteRequest;
import org.seamtally.wire.Quotes;
import org.seamtally.wire.Receipt;
import org.seamtally.wire.RefusedException;

/** Quotes: estimates that are kept, with their price, and revised. */
@Path(QuotesResource.PATH)
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@RolesAllowed({Roles.ESTIMATOR, Roles.PRICE_KEEPER, Roles.READER})
@Tag(name = "quotes", description = "Estimates that are kept with their price. A revision, once made, never changes.")
public class QuotesResource {

    static final String PATH = "/v1/quotes";

    private final Quotes quotes;
    private final Shop shop;
    private final Audit audit;
    private final Admission admission;

    QuotesResource(Quotes quotes, Shop shop, Audit audit, Admission admission) {
        this.quotes = quotes;
        this.shop = shop;
        this.audit = audit;
        this.admission = admission;
    }

    @POST
    @RolesAllowed(Roles.ESTIMATOR)
    @Operation(
            operationId = "createQuote",
            summary = "Make a quote",
            description = "Estimates a frame and keeps request, answer and price as the quote's first revision.")
    @RequestBody(
            required = true,
            description = "A frame estimate's request, and what a quote says besides.",
            content = @Content(schema = @Schema(implementation = QuoteRequest.class)))
    @APIResponse(
            responseCode = "201",
            description = "The quote is kept. A request with the same Idempotency-Key and the same body answers alike.",
            content = @Content(schema = @Schema(implementation = QuoteAnswer.class)))
    public Response create(InputStream body, @Context UriInfo uri, @Context HttpHeaders headers)
            throws IOException, RefusedException {
        UnitSystem units = Query.units(uri);
        String key = IdempotencyKey.of(headers);
        return answer(
                admission
                        .quotes()
                        .<Receipt, RefusedException>work(
                                WholeBodies.of(body), arrived -> quotes.create(shop.name(), arrived, units, key)),
                units);
    }

    @GET
    @Operation(
            operationId = "listQuotes",
            summary = "Quotes",
            description =
                    "Quotes by their latest revisions, the highest number first; with search those that have the text"
                            + " in the quote's number, the frame's name, the customer's reference or the notes, in large or small"
                            + " letters.")
    public QuoteList list(@Context UriInfo uri) {
        Query.Search asked = Query.search(uri);
        return quotes.list(
                shop.name(),
                asked.text(),
                asked.stretch().limit(),
                asked.stretch().after());
    }

    @GET
    @Path("/{id}")
    @Operation(
            operationId = "readQuote",
            summary = "A quote",
            description =
                    "The latest revision of a quote, and where the others are. Its ETag is what a revision is made"
                            + " from.")
    @APIResponse(
            responseCode = "200",
            description = "The latest revision.",
            content = @Content(schema = @Schema(implementation = QuoteAnswer.class)))
    public Response read(@PathParam("id") String id, @Context UriInfo uri) throws RefusedException {
        UnitSystem units = Query.units(uri);
        return answer(quotes.find(shop.name(), Ids.kept(id), units), units);
    }

    @POST
    @RolesAllowed(Roles.ESTIMATOR)
    @Path("/{id}/revisions")
    @Operation(
            operationId = "reviseQuote",
            summary = "Revise a quote",
            description = "Estimates a whole new request and keeps it as the quote's next revision. If-Match says which"
                    + " revision it was made from: without it 428, and 412 where there is a later one.")
    @RequestBody(
            required = true,
            description = "The whole request anew.",
            content = @Content(schema = @Schema(implementation = QuoteRequest.class)))
    @APIResponse(
            responseCode = "201",
            description =
                    "The revision is kept. A request with the same Idempotency-Key and the same body answers alike.",
            content = @Content(schema = @Schema(implementation = QuoteAnswer.class)))
    public Response revise(
            @PathParam("id") String id, InputStream body, @Context UriInfo uri, @Context HttpHeaders headers)
            throws IOException, RefusedException {
        UnitSystem units = Query.units(uri);
        UUID quote = Ids.kept(id);
        String key = IdempotencyKey.of(headers);
        IntPredicate from = Preconditions.ifMatch(headers);
        if (from == null) {
            throw Preconditions.required();
        }
        return answer(
                admission
                        .quotes()
                        .<Receipt, RefusedException>work(
                                WholeBodies.of(body),
                                arrived -> quotes.revise(shop.name(), quote, arrived, units, key, from)),
                units);
    }

    @GET
    @Path("/{id}/revisions/{n}")
    @Operation(
            operationId = "readRevision",
            summary = "A revision of a quote",
            description = "A revision as it was made.")
    @APIResponse(
            responseCode = "200",
            description = "The revision.",
            content = @Content(schema = @Schema(implementation = QuoteAnswer.class)))
    public Response revision(@PathParam("id") String id, @PathParam("n") String number, @Context UriInfo uri)
            throws RefusedException {
        UnitSystem units = Query.units(uri);
        return answer(quotes.revision(shop.name(), Ids.kept(id), Ids.number(number), units), units);
    }

    @GET
    @Path("/{id}/difference")
    @Operation(
            operationId = "compareRevisions",
            summary = "What moved a quote's price",
            description =
                    "Two revisions line by line, the fields of the request that differ, and how much of the change"
                            + " is work and how much prices.")
    public DifferenceAnswer difference(@PathParam("id") String id, @Context UriInfo uri) {
        UUID quote = Ids.kept(id);
        Query.Sides sides = Query.sides(uri);
        return quotes.difference(shop.name(), quote, sides.from(), sides.to()).orElseThrow(Problems::notFound);
    }

    private static Response answer(Optional<QuoteAnswer> found, UnitSystem units) {
        QuoteAnswer answer = found.orElseThrow(Problems::notFound);
        return Response.ok(answer)
                .header(HttpHeaders.ETAG, Preconditions.tag(answer.revision(), units))
                .build();
    }

    private Response answer(Receipt receipt, UnitSystem units) {
        if (receipt instanceof Receipt.Kept kept) {
            if (!kept.replayed()) {
                audit.quote(kept.quote(), kept.revision());
            }
            String place =
                    kept.revision() == 1 ? Hrefs.quote(kept.quote()) : Hrefs.revision(kept.quote(), kept.revision());
            return Response.status(Response.Status.CREATED)
                    .type(MediaType.APPLICATION_JSON_TYPE)
                    .header(HttpHeaders.LOCATION, place)
                    .header(HttpHeaders.ETAG, Preconditions.tag(kept.revision(), units))
                    .entity(kept.answer())
                    .build();
        }
        if (receipt instanceof Receipt.Stale stale) {
            throw Preconditions.failed(stale.latest());
        }
        if (receipt instanceof Receipt.Unknown) {
            throw Problems.notFound();
        }
        throw receipt instanceof Receipt.InFlight ? IdempotencyKey.inFlight() : IdempotencyKey.used();
    }
}
