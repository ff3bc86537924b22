package org.seamtally.api;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
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
import java.util.List;
import java.util.function.IntPredicate;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.quote.PriceBookName;
import org.seamtally.wire.Hrefs;
import org.seamtally.wire.PriceBookAnswer;
import org.seamtally.wire.PriceBookList;
import org.seamtally.wire.PriceBookRequest;
import org.seamtally.wire.PriceBookVersionAnswer;
import org.seamtally.wire.PriceBooks;
import org.seamtally.wire.ProblemReport;
import org.seamtally.wire.RefusedException;
import org.seamtally.wire.Violation;

/** Price books: a shop's prices over time. */
@Path(PriceBooksResource.PATH)
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@RolesAllowed({Roles.ESTIMATOR, Roles.PRICE_KEEPER, Roles.READER})
@Tag(name = "price books", description = "A shop's prices over time. A version, once made, never changes.")
public class PriceBooksResource {

    static final String PATH = "/v1/price-books";

    private final PriceBooks books;
    private final Shop shop;
    private final Audit audit;

    PriceBooksResource(PriceBooks books, Shop shop, Audit audit) {
        this.books = books;
        this.shop = shop;
        this.audit = audit;
    }

    @GET
    @Operation(
            operationId = "listPriceBooks",
            summary = "Price books",
            description = "Price books in the order of their names.")
    public PriceBookList list(@Context UriInfo uri) {
        Query.NamedStretch asked = Query.namedStretch(uri);
        return books.list(shop.name(), asked.limit(), asked.after());
    }

    @PUT
    @RolesAllowed(Roles.PRICE_KEEPER)
    @Path("/{name}")
    @Operation(
            operationId = "putPriceBook",
            summary = "Make a version of a price book",
            description =
                    "Makes the book with its first version, or a further version of it. A further one needs If-Match"
                            + " with the ETag of the latest: without it 428, and 412 where there is a later one. If-None-Match: *"
                            + " makes a first version alone.")
    @RequestBody(
            required = true,
            description = "Prices, and the day from which on they are used.",
            content = @Content(schema = @Schema(implementation = PriceBookRequest.class)))
    @APIResponse(
            responseCode = "201",
            description = "The version is made.",
            content = @Content(schema = @Schema(implementation = PriceBookVersionAnswer.class)))
    public Response put(
            @PathParam("name") String name, InputStream body, @Context UriInfo uri, @Context HttpHeaders headers)
            throws IOException, RefusedException {
        Query.none(uri);
        PriceBookName book = newName(name);
        boolean newAlone = Preconditions.isForNewAlone(headers);
        IntPredicate match = Preconditions.ifMatch(headers);
        IntPredicate expected = match == null ? latest -> latest == 0 : match;
        PriceBooks.Added added = books.add(
                shop.name(), book, WholeBodies.of(body), newAlone ? expected.and(latest -> latest == 0) : expected);
        if (added instanceof PriceBooks.Added.Stale stale) {
            throw match == null && !newAlone ? Preconditions.required() : Preconditions.failed(stale.latest());
        }
        PriceBookVersionAnswer version = ((PriceBooks.Added.Version) added).answer();
        audit.priceBook(book, version.version());
        return Response.status(Response.Status.CREATED)
                .header(HttpHeaders.LOCATION, Hrefs.priceBookVersion(book, version.version()))
                .header(HttpHeaders.ETAG, Preconditions.tag(version.version(), UnitSystem.SI))
                .entity(version)
                .build();
    }

    @GET
    @Path("/{name}")
    @Operation(
            operationId = "readPriceBook",
            summary = "A price book",
            description = "The version that quotes of today take, and all versions.")
    @APIResponse(
            responseCode = "200",
            description = "The price book.",
            content = @Content(schema = @Schema(implementation = PriceBookAnswer.class)))
    public Response read(@PathParam("name") String name, @Context UriInfo uri) {
        Query.none(uri);
        PriceBookAnswer answer = books.find(shop.name(), keptName(name)).orElseThrow(Problems::notFound);
        return Response.ok(answer)
                .header(HttpHeaders.ETAG, Preconditions.tag(answer.latest(), UnitSystem.SI))
                .build();
    }

    @GET
    @Path("/{name}/versions/{n}")
    @Operation(
            operationId = "readPriceBookVersion",
            summary = "A version of a price book",
            description = "A version as it was made.")
    @APIResponse(
            responseCode = "200",
            description = "The version.",
            content = @Content(schema = @Schema(implementation = PriceBookVersionAnswer.class)))
    public Response version(@PathParam("name") String name, @PathParam("n") String number, @Context UriInfo uri) {
        Query.none(uri);
        PriceBookVersionAnswer answer =
                books.version(shop.name(), keptName(name), Ids.number(number)).orElseThrow(Problems::notFound);
        return Response.ok(answer)
                .header(HttpHeaders.ETAG, Preconditions.tag(answer.version(), UnitSystem.SI))
                .build();
    }

    /** @throws ProblemException 404 where it is no name: there is no such book */
    private static PriceBookName keptName(String text) {
        if (!PriceBookName.isName(text)) {
            throw Problems.notFound();
        }
        return new PriceBookName(text);
    }

    /** @throws ProblemException 422 where it is no name */
    private static PriceBookName newName(String text) {
        if (!PriceBookName.isName(text)) {
            throw new ProblemException(new ProblemReport(
                    "/problems/invalid",
                    "The request cannot be worked with.",
                    422,
                    null,
                    List.of(new Violation(
                            "name",
                            Violation.Key.NOT_TEXT,
                            "a price book's name is " + PriceBookName.TAKEN,
                            "\"" + StreamTypes.shortened(text) + "\"",
                            null))));
        }
        return new PriceBookName(text);
    }
}
