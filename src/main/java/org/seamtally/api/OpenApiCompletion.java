package org.seamtally.api;

import io.quarkus.smallrye.openapi.OpenApiFilter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.OASFactory;
import org.eclipse.microprofile.openapi.OASFilter;
import org.eclipse.microprofile.openapi.models.OpenAPI;
import org.eclipse.microprofile.openapi.models.Operation;
import org.eclipse.microprofile.openapi.models.PathItem;
import org.eclipse.microprofile.openapi.models.media.MediaType;
import org.eclipse.microprofile.openapi.models.media.Schema;
import org.eclipse.microprofile.openapi.models.media.Schema.SchemaType;
import org.eclipse.microprofile.openapi.models.parameters.Parameter;
import org.eclipse.microprofile.openapi.models.responses.APIResponse;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.JobSettingsRequest;

/**
 * Completes the OpenAPI document with what no annotation says: ranges and units of what is sent, from the constraints
 * that check it; what every endpoint shares; examples that run.
 */
@OpenApiFilter(stages = OpenApiFilter.RunStage.BUILD)
public class OpenApiCompletion implements OASFilter {

    private static final String UNITS = "Units";

    /** Problems that any operation may answer with. A path or a method that is none is no operation's to answer. */
    private static final List<Problem> ANY = List.of(
            new Problem("400", "BadRequest", "The text is not JSON, or a query parameter is not what it may be."),
            new Problem(
                    "401",
                    "Unauthorized",
                    "The service asks who is calling: no token was sent, or one that is not taken. Not where it is open."),
            new Problem(
                    "403",
                    "Forbidden",
                    "The token's roles do not allow this; or it was asked under another host's name, or from another site's"
                            + " page."),
            new Problem("406", "NotAcceptable", "An answer in another media type was asked for."),
            new Problem("429", "TooManyRequests", "The token's subject asks more often than it may."),
            new Problem("500", "Internal", "Something is wrong with the program."));

    /** Problems that say when to ask again. */
    private static final Set<String> ASK_AGAIN = Set.of("TooManyRequests", "Unavailable");

    /** Problems of what is kept and of what is worked out: whatever is not to be had now. */
    private static final List<Problem> KEPT = List.of(
            new Problem(
                    "503",
                    "Unavailable",
                    "What is kept cannot be reached now; or more is asked for than can be worked out, or working it out took too long; or too many streams are open."));

    private static final List<Problem> ONE_KEPT =
            List.of(new Problem("404", "NotFound", "There is no such thing, or no longer."));

    private static final List<Problem> CONFLICT = List.of(new Problem(
            "409",
            "Conflict",
            "A request with the same Idempotency-Key is under way; or figures are asked for in units that another version of"
                    + " the engine would have to work out; or a copy is asked for of what a database server keeps."));

    private static final List<Problem> PRECONDITION = List.of(
            new Problem("412", "PreconditionFailed", "It was changed since the state that If-Match names."),
            new Problem("428", "PreconditionRequired", "If-Match is needed: it says which state is changed."));

    /** Operations whose answers hold no quantities, or those of the units that were asked for before. */
    private static final Set<String> WITHOUT_UNITS = Set.of(
            "backUp",
            "listBatches",
            "readBatch",
            "watchBatch",
            "readBatchRefusals",
            "summarizeBatch",
            "deleteBatch",
            "listQuotes",
            "compareRevisions",
            "listPriceBooks",
            "putPriceBook",
            "readPriceBook",
            "readPriceBookVersion");

    private static final Set<String> CHANGES = Set.of("reviseQuote", "putPriceBook");

    /** Tags of what is kept. */
    private static final Set<String> KEPT_TAGS = Set.of("batches", "quotes", "price books", "operation");

    /** Parts of a path that name one thing that is kept. */
    private static final Set<String> NAMES = Set.of("id", "name");

    private static final Set<String> CONFLICTS = Set.of(
            "backUp",
            "createBatch",
            "readBatchResults",
            "createQuote",
            "reviseQuote",
            "readQuote",
            "readRevision",
            "printQuote");

    /** Problems that a body may bring besides. */
    private static final List<Problem> BODY = List.of(
            new Problem("408", "TooSlow", "The body, or a line of a job file, took too long to arrive."),
            new Problem(
                    "413",
                    "TooLarge",
                    "The JSON body is larger than " + (WholeBodies.LARGEST >> 20)
                            + " MiB, or a job file's settings than 1 MiB."),
            new Problem(
                    "415",
                    "UnsupportedMediaType",
                    "The body's media type is none of those that are taken, or its charset is not UTF-8."),
            new Problem("422", "Invalid", "The body cannot be worked with: everything found wrong, by path."));

    private record Problem(String status, String name, String description) {}

    @Override
    public void filterOpenAPI(OpenAPI document) {
        Map<String, Schema> schemas = new TreeMap<>(document.getComponents().getSchemas());
        // how a single value is read is no part of the contract
        schemas.remove("Leaf");
        schemas.remove("Kind");
        schemas.putAll(RequestSchemas.of(Arrays.stream(RequestBodies.values())
                .<Class<?>>map(RequestBodies::request)
                .toList()));
        schemas.putAll(RequestSchemas.of(List.of(JobSettingsRequest.class)));
        document.getComponents().setSchemas(schemas);
        JobFileDocument.complete(document);
        QuoteDocument.complete(document);
        schemas = new TreeMap<>(document.getComponents().getSchemas());
        schemas.values().forEach(OpenApiCompletion::leaveReferencesAlone);
        schemas.replaceAll((name, schema) -> inOrder(schema));
        document.getComponents().setSchemas(schemas);
        document.getComponents().addParameter(UNITS, units());
        Stream.of(ANY, BODY, KEPT, ONE_KEPT, CONFLICT, PRECONDITION)
                .flatMap(List::stream)
                .forEach(problem -> document.getComponents().addResponse(problem.name, response(problem)));
        ASK_AGAIN.forEach(name -> document.getComponents()
                .getResponses()
                .get(name)
                .addHeader(
                        "Retry-After",
                        OASFactory.createHeader()
                                .description("Seconds after which to ask again.")
                                .schema(OASFactory.createSchema().addType(SchemaType.INTEGER))));
        document.getPaths()
                .getPathItems()
                .values()
                .forEach(path -> path.getOperations().values().forEach(OpenApiCompletion::complete));
        document.getComponents()
                .getResponses()
                .get("Unauthorized")
                .addHeader(
                        "WWW-Authenticate",
                        OASFactory.createHeader()
                                .description("The scheme: Bearer, and why a token was not taken.")
                                .schema(OASFactory.createSchema().addType(SchemaType.STRING)));
        for (RequestBodies body : RequestBodies.values()) {
            addExamples(document.getPaths().getPathItem(body.path()), body);
        }
    }

    /** What a reference refers to says what type it is; beside it stands the description alone. */
    private static void leaveReferencesAlone(Schema schema) {
        if (schema.getProperties() != null) {
            schema.getProperties().values().stream()
                    .filter(property -> property.getRef() != null)
                    .forEach(property -> property.setType(null));
        }
    }

    /** The same with its keywords in alphabetical order: they come in another one at each build, and are committed. */
    private static Schema inOrder(Schema schema) {
        Schema ordered = OASFactory.createSchema();
        new TreeMap<>(schema.getAll()).forEach(ordered::set);
        if (ordered.getProperties() != null) {
            Map<String, Schema> properties = new LinkedHashMap<>(ordered.getProperties());
            properties.replaceAll((name, property) -> inOrder(property));
            ordered.setProperties(properties);
        }
        return ordered.getItems() == null ? ordered : ordered.items(inOrder(ordered.getItems()));
    }

    private static Parameter units() {
        Schema words = OASFactory.createSchema()
                .addType(SchemaType.STRING)
                .defaultValue(UnitSystem.SI.word())
                .addExample(UnitSystem.US.word());
        Arrays.stream(UnitSystem.values()).map(UnitSystem::word).forEach(words::addEnumeration);
        return OASFactory.createParameter()
                .name("units")
                .in(Parameter.In.QUERY)
                .required(false)
                .description("Units of the answer: SI, or US customary.")
                .schema(words);
    }

    private static APIResponse response(Problem problem) {
        return OASFactory.createAPIResponse()
                .description(problem.description)
                .content(OASFactory.createContent()
                        .addMediaType(
                                Problems.MEDIA_TYPE,
                                OASFactory.createMediaType()
                                        .schema(OASFactory.createSchema().ref("#/components/schemas/ProblemReport"))));
    }

    private static void complete(Operation operation) {
        String id = operation.getOperationId();
        if (!WITHOUT_UNITS.contains(id)) {
            operation.addParameter(OASFactory.createParameter().ref("#/components/parameters/" + UNITS));
        }
        Map<String, APIResponse> responses =
                new TreeMap<>(operation.getResponses().getAPIResponses());
        boolean kept = operation.getTags().stream().anyMatch(KEPT_TAGS::contains);
        boolean oneKept = kept
                && operation.getParameters() != null
                && operation.getParameters().stream()
                        .anyMatch(
                                // a reference has no name, and stands in no path
                                parameter ->
                                        parameter.getIn() == Parameter.In.PATH && NAMES.contains(parameter.getName()))
                // the first version makes the book
                && !id.equals("putPriceBook");
        List<List<Problem>> problems = new ArrayList<>(List.of(ANY));
        problems.add(operation.getRequestBody() == null ? List.of() : BODY);
        problems.add(kept || operation.getRequestBody() != null ? KEPT : List.of());
        problems.add(oneKept ? ONE_KEPT : List.of());
        problems.add(CONFLICTS.contains(id) ? CONFLICT : List.of());
        problems.add(CHANGES.contains(id) ? PRECONDITION : List.of());
        problems.stream().flatMap(List::stream).forEach(problem -> responses.put(problem.status, reference(problem)));
        operation.getResponses().setAPIResponses(new LinkedHashMap<>(responses));
        // nobody is asked where the service is open to its own machine; the roles come from the endpoint's annotation
        operation.addSecurityRequirement(OASFactory.createSecurityRequirement());
    }

    private static APIResponse reference(Problem problem) {
        return OASFactory.createAPIResponse().ref("#/components/responses/" + problem.name);
    }

    private static void addExamples(PathItem path, RequestBodies body) {
        Operation operation = path.getPOST() == null ? path.getPUT() : path.getPOST();
        MediaType json = operation.getRequestBody().getContent().getMediaType("application/json");
        body.examples()
                .forEach(example -> json.addExample(
                        example.name(),
                        OASFactory.createExample().summary(example.summary()).value(example.body())));
    }
}
