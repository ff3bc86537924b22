package org.seamtally.api;

import jakarta.ws.rs.core.HttpHeaders;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.seamtally.quote.PriceBookName;

/** What the OpenAPI document says of quotes and price books that no annotation says: parameters and headers. */
final class QuoteDocument {

    private QuoteDocument() {}

    /** Completes the operations on quotes and price books. */
    static void complete(OpenAPI document) {
        refer(document, "QuoteAnswer", "request", "QuoteRequest");
        refer(document, "QuoteAnswer", "estimate", "FrameEstimateAnswer");
        refer(document, "PriceBookVersionAnswer", "prices", "PricesRequest");
        Map<String, PathItem> paths = document.getPaths().getPathItems();
        String quote = QuotesResource.PATH + "/{id}";
        String book = PriceBooksResource.PATH + "/{name}";
        Operation create = paths.get(QuotesResource.PATH).getPOST();
        create.addParameter(JobFileDocument.key());
        Operation revise = paths.get(quote + "/revisions").getPOST();
        revise.addParameter(ifMatch("The ETag of the revision that this one was made from. Needed."));
        revise.addParameter(JobFileDocument.key());
        Operation list = paths.get(QuotesResource.PATH).getGET();
        list.addParameter(query("search", false, "A text to be found.")
                .schema(JobFileDocument.text().minLength(1).maxLength(Query.LONGEST_SEARCH)));
        list.addParameter(JobFileDocument.limit());
        list.addParameter(JobFileDocument.after());
        Operation compare = paths.get(quote + "/difference").getGET();
        compare.addParameter(query("from", true, "The revision compared with.").schema(number()));
        compare.addParameter(query("to", true, "The revision compared.").schema(number()));
        Operation books = paths.get(PriceBooksResource.PATH).getGET();
        books.addParameter(JobFileDocument.limit());
        books.addParameter(
                query("after", false, "The name that stands before those asked for: the next of the page before.")
                        .schema(JobFileDocument.text()));
        Operation put = paths.get(book).getPUT();
        put.addParameter(ifMatch("The ETag of the book as it was read. Needed where the book is there already."));
        put.addParameter(header(HttpHeaders.IF_NONE_MATCH, "* makes the book only where there is none of this name.")
                .schema(JobFileDocument.text().enumeration(List.of("*"))));
        tagged(create, "201", true);
        tagged(revise, "201", true);
        tagged(put, "201", true);
        tagged(paths.get(quote).getGET(), "200", false);
        tagged(paths.get(quote + "/revisions/{n}").getGET(), "200", false);
        tagged(paths.get(book).getGET(), "200", false);
        tagged(paths.get(book + "/versions/{n}").getGET(), "200", false);
        paths.forEach((path, item) -> {
            if (path.startsWith(quote) || path.startsWith(book)) {
                item.getOperations().values().stream()
                        .flatMap(operation -> operation.getParameters().stream())
                        .forEach(QuoteDocument::describe);
            }
        });
    }

    /** What was kept as a text stands in an answer as what it is. */
    private static void refer(OpenAPI document, String answer, String property, String schema) {
        Schema holder = document.getComponents().getSchemas().get(answer);
        String description = holder.getProperties().get(property).getDescription();
        holder.addProperty(
                property,
                OASFactory.createSchema().ref("#/components/schemas/" + schema).description(description));
    }

    private static void describe(Parameter parameter) {
        switch (parameter.getName()) {
            case "id" ->
                parameter
                        .description("The quote's id.")
                        .schema(JobFileDocument.text().format("uuid"))
                        .example("0f6f2d0a-3c1e-4b7e-8d55-2a9f6c1b7e43");
            case "name" ->
                parameter
                        .description("The price book's name: " + PriceBookName.TAKEN + ".")
                        .schema(JobFileDocument.text().minLength(1).maxLength(PriceBookName.LONGEST))
                        .example("Shop floor");
            case "n" -> parameter.description("Its number, from 1 on.").schema(number());
            default -> {
                // says itself what it is
            }
        }
    }

    private static Schema number() {
        return OASFactory.createSchema().addType(Schema.SchemaType.INTEGER).minimum(BigDecimal.ONE);
    }

    private static Parameter query(String name, boolean needed, String description) {
        return OASFactory.createParameter()
                .name(name)
                .in(Parameter.In.QUERY)
                .required(needed)
                .description(description);
    }

    private static Parameter header(String name, String description) {
        return OASFactory.createParameter()
                .name(name)
                .in(Parameter.In.HEADER)
                .required(false)
                .description(description);
    }

    private static Parameter ifMatch(String description) {
        return header(HttpHeaders.IF_MATCH, description).schema(JobFileDocument.text());
    }

    private static void tagged(Operation operation, String status, boolean made) {
        APIResponse answer = operation.getResponses().getAPIResponse(status);
        answer.addHeader(
                HttpHeaders.ETAG,
                OASFactory.createHeader()
                        .description("What If-Match takes where this is changed.")
                        .schema(JobFileDocument.text()));
        if (made) {
            answer.addHeader(
                    HttpHeaders.LOCATION,
                    OASFactory.createHeader()
                            .description("Where it is.")
                            .schema(JobFileDocument.text().format("uri-reference")));
        }
    }
}
