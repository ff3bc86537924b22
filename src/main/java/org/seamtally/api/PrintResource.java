package org.seamtally.api;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
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
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.seamtally.page.PrintedQuote;
import org.seamtally.page.QuotePrinter;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.QuoteAnswer;
import org.seamtally.wire.Quotes;
import org.seamtally.wire.RefusedException;

/** Quotes on paper. */
@Path(QuotesResource.PATH + "/{id}/print")
@Blocking
@RolesAllowed({Roles.ESTIMATOR, Roles.PRICE_KEEPER, Roles.READER})
@Tag(name = "quotes")
public class PrintResource {

    private static final String PDF = "application/pdf";

    private final Quotes quotes;
    private final QuotePrinter printer;
    private final Shop shop;
    private final Admission admission;
    private final Letterheads letterheads;

    PrintResource(Quotes quotes, QuotePrinter printer, Shop shop, Admission admission, Letterheads letterheads) {
        this.letterheads = letterheads;
        this.admission = admission;
        this.quotes = quotes;
        this.printer = printer;
        this.shop = shop;
    }

    @GET
    @Produces({MediaType.TEXT_HTML, PDF})
    @Operation(
            operationId = "printQuote",
            summary = "A quote on paper",
            description =
                    "One or two pages to be sent to the customer: work, material, price, validity, assumptions, cautions."
                            + " Or the shop floor's: what to set at each joint, and no money. On A4 in SI units, on US letter"
                            + " in US units.")
    @Parameter(
            name = "form",
            in = ParameterIn.QUERY,
            description = "Whom it is for. Left out: customer.",
            schema =
                    @Schema(
                            type = SchemaType.STRING,
                            enumeration = {"customer", "shop-floor"},
                            defaultValue = "customer"))
    @Parameter(
            name = "format",
            in = ParameterIn.QUERY,
            description = "What it is sent as. Left out: html.",
            schema =
                    @Schema(
                            type = SchemaType.STRING,
                            enumeration = {"html", "pdf"},
                            defaultValue = "html"))
    @Parameter(
            name = "revision",
            in = ParameterIn.QUERY,
            description = "Which revision. Left out: the latest.",
            schema = @Schema(type = SchemaType.INTEGER, minimum = "1"))
    @APIResponse(
            responseCode = "200",
            description = "The printed quote.",
            content = {
                @Content(mediaType = MediaType.TEXT_HTML, schema = @Schema(type = SchemaType.STRING)),
                @Content(mediaType = PDF, schema = @Schema(type = SchemaType.STRING, format = "binary"))
            })
    public Response print(@PathParam("id") String id, @Context UriInfo uri) throws IOException, RefusedException {
        Query.Print asked = Query.print(uri);
        UUID quote = Ids.kept(id);
        QuoteAnswer answer = (asked.revision() == null
                        ? quotes.find(shop.name(), quote, asked.units())
                        : quotes.revision(shop.name(), quote, asked.revision(), asked.units()))
                .orElseThrow(Problems::notFound);
        PrintedQuote printed = printed(answer);
        Object document = admission
                .quotes()
                .<Object, RuntimeException>work(
                        InputStream.nullInputStream(),
                        nothing -> asked.format() == PrintFormat.PDF
                                ? printer.pdf(printed, asked.form())
                                : printer.html(printed, asked.form()));
        String file = printed.number() + "-" + printed.revision() + "-"
                + asked.form().word() + "." + asked.format().word();
        return Response.ok(document, asked.format().mediaType())
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"" + file + "\"")
                .header("Content-Security-Policy", printer.contentSecurityPolicy())
                .build();
    }

    private PrintedQuote printed(QuoteAnswer quote) {
        return new PrintedQuote(
                quote.number(),
                quote.revision(),
                OffsetDateTime.parse(quote.made()).toLocalDate(),
                Optional.ofNullable(quote.customerReference()),
                Optional.ofNullable(quote.validUntil()).map(LocalDate::parse),
                Optional.ofNullable(quote.notes()),
                Optional.ofNullable(letterheads.byShop().get(shop.name())),
                FrameEstimateAnswer.read(quote.estimate()));
    }
}
