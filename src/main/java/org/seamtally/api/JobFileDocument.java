package org.seamtally.api;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.media.Content;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.seamtally.batch.BatchPlan;
import org.seamtally.wire.Json;

/** What the OpenAPI document says of job files, of their results, and of what else no annotation on batches says. */
final class JobFileDocument {

    private static final String LINE = "#/components/schemas/";

    private JobFileDocument() {}

    /** Completes the operations that take or give job files, and those on batches. */
    static void complete(OpenAPI document) {
        document.getComponents().addSchema("JobTrailer", trailer());
        Map<String, org.eclipse.microprofile.openapi.models.PathItem> paths =
                document.getPaths().getPathItems();
        Operation estimate = paths.get("/v1/frame-estimates").getPOST();
        addBodies(estimate.getRequestBody().getContent());
        addResults(estimate.getResponses().getAPIResponse("200").getContent());
        Operation create = paths.get(BatchesResource.PATH).getPOST();
        Content bodies = OASFactory.createContent();
        addBodies(bodies);
        create.getRequestBody().setContent(bodies);
        create.addParameter(name());
        create.addParameter(key());
        create.getResponses()
                .getAPIResponse("202")
                .addHeader(
                        "Location",
                        OASFactory.createHeader()
                                .description("Where the batch is.")
                                .schema(text().format("uri-reference")));
        Operation list = paths.get(BatchesResource.PATH).getGET();
        list.addParameter(limit());
        list.addParameter(after());
        Operation results = paths.get(BatchesResource.PATH + "/{id}/results").getGET();
        Content lines = OASFactory.createContent();
        addResults(lines);
        results.getResponses().getAPIResponse("200").setContent(lines);
        Content refusals = paths.get(BatchesResource.PATH + "/{id}/refusals")
                .getGET()
                .getResponses()
                .getAPIResponse("200")
                .getContent();
        refusals.getMediaType(StreamTypes.NDJSON).setSchema(resultLine());
        Operation watch = paths.get(BatchesResource.PATH + "/{id}/events").getGET();
        watch.addParameter(lastEvent());
        watch.getResponses()
                .addAPIResponse(
                        "204", OASFactory.createAPIResponse().description("The listener has heard the end already."));
        paths.entrySet().stream()
                .filter(path -> path.getKey().startsWith(BatchesResource.PATH))
                .flatMap(path -> path.getValue().getOperations().values().stream())
                .filter(operation -> operation.getParameters() != null)
                .flatMap(operation -> operation.getParameters().stream())
                .filter(parameter -> "id".equals(parameter.getName()))
                .forEach(parameter -> parameter
                        .description("The batch's id.")
                        .schema(text().format("uuid"))
                        .example("3f1c6a5e-8f2b-4d0e-9a51-7c9be0a4d210"));
    }

    static Schema text() {
        return OASFactory.createSchema().addType(SchemaType.STRING);
    }

    static Parameter key() {
        return OASFactory.createParameter()
                .name(IdempotencyKey.HEADER)
                .in(Parameter.In.HEADER)
                .required(false)
                .description("What makes the request count once, however often it is sent: 1 to 255 visible ASCII"
                        + " characters, such as a UUID. With the same body it is answered alike; with another, 422; while"
                        + " the first is under way, 409.")
                .schema(text().minLength(1).maxLength(255).pattern("^" + IdempotencyKey.PATTERN + "$"));
    }

    private static Parameter name() {
        return OASFactory.createParameter()
                .name("name")
                .in(Parameter.In.QUERY)
                .required(false)
                .description("What the batch is called in lists, such as its file's name.")
                .schema(text().minLength(1)
                        .maxLength(BatchPlan.LONGEST_NAME)
                        .pattern("^(?=.*\\S)[^\\u0000-\\u001f\\u007f-\\u009f]+$"))
                .example("open-orders.csv");
    }

    static Parameter limit() {
        return OASFactory.createParameter()
                .name("limit")
                .in(Parameter.In.QUERY)
                .required(false)
                .description("Items at most.")
                .schema(OASFactory.createSchema()
                        .addType(SchemaType.INTEGER)
                        .minimum(BigDecimal.ONE)
                        .maximum(BigDecimal.valueOf(Query.GREATEST_LIMIT))
                        .defaultValue(Query.USUAL_LIMIT));
    }

    static Parameter after() {
        return OASFactory.createParameter()
                .name("after")
                .in(Parameter.In.QUERY)
                .required(false)
                .description("The item that stands before those asked for: the next of the page before.")
                .schema(text().format("uuid"));
    }

    private static Parameter lastEvent() {
        return OASFactory.createParameter()
                .name("Last-Event-ID")
                .in(Parameter.In.HEADER)
                .required(false)
                .description("Id of the last event heard, as browsers send it by themselves.")
                .schema(text());
    }

    private static void addBodies(Content content) {
        content.addMediaType(StreamTypes.NDJSON, lines());
        content.addMediaType(
                StreamTypes.CSV,
                OASFactory.createMediaType()
                        .schema(text().description(
                                        "A table by RFC 4180 in UTF-8: a joint a row, a frame's rows together,"
                                                + " units in the header."))
                        .addExample(
                                "two-frames",
                                OASFactory.createExample()
                                        .summary("Two frames in three rows")
                                        .value(resource("job-file.csv"))));
        content.addMediaType(StreamTypes.PARTS, parts());
    }

    /** A request a line: schema and examples are each line's, for a document can say nothing of lines one after another. */
    private static MediaType lines() {
        MediaType lines =
                OASFactory.createMediaType().schema(OASFactory.createSchema().ref(LINE + "FrameEstimateRequest"));
        List<String> examples = resource("job-file.ndjson").lines().toList();
        for (int i = 0; i < examples.size(); i++) {
            lines.addExample(
                    "line-" + (i + 1),
                    OASFactory.createExample()
                            .summary("Line " + (i + 1) + " of " + examples.size() + "; this schema is each line's")
                            .value(tree(examples.get(i))));
        }
        return lines;
    }

    private static Object tree(String json) {
        try {
            return Json.mapper().readValue(json, Object.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static MediaType parts() {
        Schema form = OASFactory.createSchema()
                .addType(SchemaType.OBJECT)
                .description("The shop's settings and prices for all frames, and then the job file, in this order.")
                .addProperty(
                        "settings",
                        OASFactory.createSchema()
                                .ref(LINE + "JobSettingsRequest")
                                .description(
                                        "application/json, at most 1 MiB; a frame takes from it the parts that it leaves"
                                                + " out."))
                .addProperty(
                        "jobs",
                        text().description("The job file: application/x-ndjson or text/csv, named as the part's"
                                + " Content-Type."))
                .addRequired("jobs");
        return OASFactory.createMediaType()
                .schema(form)
                .addEncoding("settings", OASFactory.createEncoding().contentType("application/json"))
                .addEncoding("jobs", OASFactory.createEncoding().contentType(String.join(", ", StreamTypes.taken())));
    }

    private static void addResults(Content content) {
        content.addMediaType(StreamTypes.NDJSON, OASFactory.createMediaType().schema(resultLine()));
        content.addMediaType(
                StreamTypes.CSV,
                OASFactory.createMediaType()
                        .schema(text().description(
                                        "A table by RFC 4180 in UTF-8: a frame a row, the trailer the last.")));
    }

    private static Schema resultLine() {
        return OASFactory.createSchema()
                .description("Each line: a frame's result, and in the last line the trailer.")
                .addOneOf(OASFactory.createSchema().ref(LINE + "JobAnswer"))
                .addOneOf(OASFactory.createSchema().ref(LINE + "JobTrailer"));
    }

    private static Schema trailer() {
        Schema counts = OASFactory.createSchema()
                .addType(SchemaType.OBJECT)
                .description("Frames, and whether these are all.")
                .addProperty("read", count("Done and refused together."))
                .addProperty("done", count("Estimated."))
                .addProperty("refused", count("Refused, each with its problem."))
                .addProperty(
                        "complete",
                        OASFactory.createSchema()
                                .addType(SchemaType.BOOLEAN)
                                .description("Whether nothing more will come: false for a batch that has not ended, or"
                                        + " was cancelled."))
                .required(List.of("read", "done", "refused", "complete"));
        return OASFactory.createSchema()
                .addType(SchemaType.OBJECT)
                .description("The last line of results: without it they were cut.")
                .addProperty("trailer", counts)
                .addRequired("trailer");
    }

    private static Schema count(String description) {
        return OASFactory.createSchema()
                .addType(SchemaType.INTEGER)
                .minimum(BigDecimal.ZERO)
                .description(description);
    }

    private static String resource(String name) {
        try (InputStream in = JobFileDocument.class.getResourceAsStream("examples/" + name)) {
            if (in == null) {
                throw new IllegalStateException("no resource " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
