package org.seamtally.api;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.CatalogueAnswers;
import org.seamtally.wire.FieldRule;
import org.seamtally.wire.JointRequest;
import org.seamtally.wire.Words;

/** The document says all that a caller has to know. */
@QuarkusTest
class DocumentContentTest {

    private Document document;

    @BeforeEach
    void fetch() {
        document = Document.live();
    }

    @Test
    void everySchemaAndEveryPropertyIsDescribed() {
        List<String> silent = new ArrayList<>();
        document.schemas().properties().forEach(schema -> {
            if (schema.getValue().path("description").asText().isBlank()) {
                silent.add(schema.getKey());
            }
        });
        document.eachSchema((path, schema) -> schema.path("properties")
                .properties()
                .forEach(property -> {
                    if (property.getValue().path("description").asText().isBlank()) {
                        silent.add(path + "." + property.getKey());
                    }
                }));
        assertEquals(List.of(), silent);
    }

    /** What an operation takes and may answer besides what all do. */
    private record Due(List<String> parameters, String answer, String... statuses) {}

    private static final Due ESTIMATE = new Due(List.of("units"), "200", "408", "413", "415", "422", "503");
    private static final Due CATALOGUE = new Due(List.of("units"), "200");

    private static final Map<String, Due> OTHERS = Map.ofEntries(
            Map.entry("totalFrame", new Due(List.of("joint", "units"), "200", "408", "413", "415", "422", "503")),
            Map.entry("workOutDeposit", new Due(List.of("course", "units"), "200", "408", "413", "415", "422", "503")),
            Map.entry("estimateFrame", new Due(List.of("units"), "200", "408", "413", "415", "422", "503")),
            Map.entry(
                    "createBatch",
                    new Due(
                            List.of("name", "Idempotency-Key", "units"),
                            "202",
                            "408",
                            "409",
                            "413",
                            "415",
                            "422",
                            "503")),
            Map.entry("backUp", new Due(List.of(), "200", "409", "503")),
            Map.entry("listBatches", new Due(List.of("limit", "after"), "200", "503")),
            Map.entry("readBatch", new Due(List.of("id"), "200", "404", "503")),
            Map.entry("watchBatch", new Due(List.of("id", "Last-Event-ID"), "200", "204", "404", "503")),
            Map.entry("readBatchResults", new Due(List.of("id", "units"), "200", "404", "409", "503")),
            Map.entry("readBatchRefusals", new Due(List.of("id"), "200", "404", "503")),
            Map.entry("summarizeBatch", new Due(List.of("id"), "200", "404", "503")),
            Map.entry("deleteBatch", new Due(List.of("id"), "202", "204", "404", "503")),
            Map.entry(
                    "createQuote",
                    new Due(List.of("Idempotency-Key", "units"), "201", "409", "408", "413", "415", "422", "503")),
            Map.entry("listQuotes", new Due(List.of("search", "limit", "after"), "200", "503")),
            Map.entry("readQuote", new Due(List.of("id", "units"), "200", "404", "409", "503")),
            Map.entry(
                    "reviseQuote",
                    new Due(
                            List.of("id", "If-Match", "Idempotency-Key", "units"),
                            "201",
                            "404",
                            "409",
                            "412",
                            "408",
                            "413",
                            "415",
                            "422",
                            "428",
                            "503")),
            Map.entry("readRevision", new Due(List.of("id", "n", "units"), "200", "404", "409", "503")),
            Map.entry("compareRevisions", new Due(List.of("id", "from", "to"), "200", "404", "503")),
            Map.entry(
                    "printQuote",
                    new Due(List.of("form", "format", "revision", "id", "units"), "200", "404", "409", "503")),
            Map.entry("listPriceBooks", new Due(List.of("limit", "after"), "200", "503")),
            Map.entry(
                    "putPriceBook",
                    new Due(
                            List.of("name", "If-Match", "If-None-Match"),
                            "201",
                            "412",
                            "408",
                            "413",
                            "415",
                            "422",
                            "428",
                            "503")),
            Map.entry("readPriceBook", new Due(List.of("name"), "200", "404", "503")),
            Map.entry("readPriceBookVersion", new Due(List.of("n", "name"), "200", "404", "503")));

    private static Due due(Document.Operation operation) {
        Due other = OTHERS.get(operation.node().path("operationId").asText());
        return other != null ? other : operation.method().equals("post") ? ESTIMATE : CATALOGUE;
    }

    @Test
    void everyOperationListsItsParametersAndItsProblems() {
        assertEquals(
                8 + 6 + 8 + 11 + 1, document.operations().size(), "a new endpoint is looked at here, and in its tests");
        for (Document.Operation operation : document.operations()) {
            Due due = due(operation);
            List<String> parameters = new ArrayList<>();
            operation.node().path("parameters").forEach(parameter -> {
                JsonNode resolved = document.resolved(parameter);
                parameters.add(resolved.path("name").asText());
                assertFalse(resolved.path("description").asText().isBlank(), resolved.toString());
            });
            assertEquals(due.parameters(), parameters, operation.path());
            Set<String> expected = new TreeSet<>(List.of(due.answer(), "400", "401", "403", "406", "429", "500"));
            expected.addAll(List.of(due.statuses()));
            Set<String> statuses = new TreeSet<>();
            operation.node().path("responses").properties().forEach(response -> {
                statuses.add(response.getKey());
                JsonNode content = document.resolved(response.getValue()).path("content");
                String where = operation.path() + " " + response.getKey();
                if (response.getKey().startsWith("2")) {
                    assertEquals(response.getKey().equals("204"), content.isEmpty(), where);
                    content.forEach(type -> assertFalse(type.path("schema").isEmpty(), where));
                } else {
                    assertEquals(1, content.size(), where);
                    assertFalse(
                            content.path("application/problem+json")
                                    .path("schema")
                                    .isEmpty(),
                            where);
                }
            });
            assertEquals(expected, statuses, operation.path());
        }
    }

    @Test
    void jobFilesAndTheirResultsAreDocumentedWhereverTheyPass() {
        for (String path : List.of("/v1/frame-estimates", "/v1/batches")) {
            JsonNode bodies = document.root().path("paths").path(path).at("/post/requestBody/content");
            for (String type : List.of("application/x-ndjson", "text/csv")) {
                assertFalse(bodies.path(type).path("examples").isEmpty(), path + " " + type);
            }
            assertEquals(
                    "#/components/schemas/JobSettingsRequest",
                    bodies.path("multipart/form-data")
                            .at("/schema/properties/settings/$ref")
                            .asText());
        }
        for (String results : List.of(
                "/paths/~1v1~1frame-estimates/post/responses/200/content",
                "/paths/~1v1~1batches~1{id}~1results/get/responses/200/content")) {
            JsonNode content = document.root().at(results);
            assertEquals(
                    2, content.path("application/x-ndjson").at("/schema/oneOf").size(), results);
            assertTrue(content.has("text/csv"), results);
        }
        assertTrue(
                document.root().at("/components/responses/Unavailable/headers").has("Retry-After"));
        assertTrue(document.root()
                .at("/paths/~1v1~1batches/post/responses/202/headers")
                .has("Location"));
    }

    @Test
    void theUnitsParameterOffersTheSystemsThatThereAre() {
        JsonNode schema = document.root().at("/components/parameters/Units/schema");
        assertEquals(Arrays.stream(UnitSystem.values()).map(UnitSystem::word).toList(), texts(schema.path("enum")));
        assertEquals("si", schema.path("default").asText());
    }

    @Test
    void everyBodyIsListedOnceAndBringsExamples() throws IOException {
        Map<String, String> documented = new TreeMap<>();
        document.operations().stream()
                .filter(operation -> !operation.body().isMissingNode())
                .forEach(operation -> {
                    documented.put(
                            operation.path(),
                            operation.body().at("/schema/$ref").asText().replaceAll(".*/", ""));
                    assertFalse(operation.body().path("examples").isEmpty(), operation.path());
                });
        assertEquals(
                Arrays.stream(RequestBodies.values())
                        .collect(Collectors.toMap(
                                RequestBodies::path,
                                body -> body.request().getSimpleName(),
                                (a, b) -> a,
                                TreeMap::new)),
                documented);
    }

    @Test
    void theFrameEstimatesExampleIsTheSampleJob() throws IOException {
        JsonNode sample = Document.read(Files.readString(Path.of("sample-jobs", "trail-buggy-rear-bay.json")));
        JsonNode example = document.root()
                .at("/paths/~1v1~1frame-estimates/post/requestBody/content/application~1json/examples"
                        + "/frame-estimate/value");
        assertEquals(sample, example);
    }

    @Test
    void whatIsSentIsClosedTypedAndSaidInFull() {
        assertTrue(document.schema("Leaf").isMissingNode(), "how a single value is read is no part of the contract");
        Set<String> requests = requestSchemas();
        assertTrue(requests.size() >= 20, requests.toString());
        for (String name : requests) {
            JsonNode schema = document.schema(name);
            if (schema.has("oneOf")) {
                continue;
            }
            assertTrue(schema.has("additionalProperties"), name);
            assertFalse(schema.get("additionalProperties").asBoolean(true), name + " takes no other fields");
            schema.path("properties").properties().forEach(property -> {
                JsonNode field = property.getValue();
                String where = name + "." + property.getKey();
                assertTrue(field.has("$ref") || field.has("type") || field.has("oneOf"), where);
                boolean single =
                        !field.has("$ref") && !field.path("type").asText().equals("array");
                assertTrue(!single || field.path("examples").size() == 1, where + " has an example");
            });
        }
    }

    /** Names of the schemas that bodies are made of. */
    private Set<String> requestSchemas() {
        Set<String> reached = new TreeSet<>();
        document.operations().stream()
                .filter(operation -> operation.method().equals("post"))
                .forEach(operation -> collect(operation.body().path("schema"), reached));
        return reached;
    }

    private void collect(JsonNode node, Set<String> reached) {
        if (node.has("$ref")) {
            String name = node.get("$ref").asText().replaceAll(".*/", "");
            if (reached.add(name)) {
                collect(document.schema(name), reached);
            }
        }
        node.path("properties").forEach(property -> collect(property, reached));
        node.path("oneOf").forEach(alternative -> collect(alternative, reached));
        if (node.has("items")) {
            collect(node.get("items"), reached);
        }
    }

    @Test
    void requiredFieldsAreThoseThatTheConstraintsNeed() {
        assertEquals(
                List.of("outsideDiameter", "wall"),
                texts(document.schema("TubeRequest").path("required")));
        assertEquals(
                List.of("frame"), texts(document.schema("FrameEstimateRequest").path("required")));
        assertTrue(document.schema("GasRequest").path("required").isMissingNode());
        assertEquals(
                FieldRule.of(org.seamtally.wire.DutyRequest.class).stream()
                        .filter(FieldRule::needed)
                        .map(FieldRule::field)
                        .toList(),
                texts(document.schema("DutyRequest").path("required")));
    }

    @Test
    void rangesUnitsAndWordsAreTheConstraints() {
        JsonNode diameter = document.schema("TubeRequest").at("/properties/outsideDiameter");
        JsonNode dilution = document.schema("SteelRequest").at("/properties/dilution");
        JsonNode count = document.schema("PlugRequest").at("/properties/count");
        JsonNode joints = document.schema("FrameRequest").at("/properties/joints");
        JsonNode name = document.schema("FrameRequest").at("/properties/name");
        JsonNode labour = document.schema("PricesRequest").at("/properties/labour");
        assertAll(
                () -> assertEquals(
                        "Outside diameter. 3 mm to 1 m; mm, cm, m, in or ft.",
                        diameter.path("description").asText()),
                () -> assertEquals("string", diameter.path("type").asText()),
                () -> assertEquals("number", dilution.path("type").asText()),
                () -> assertEquals(0, dilution.path("minimum").asDouble(-1)),
                () -> assertEquals(1, dilution.path("exclusiveMaximum").asDouble()),
                () -> assertFalse(dilution.has("maximum")),
                () -> assertEquals(
                        "Share of the weld that is base metal. 0 to below 1. Left out: 0.30.",
                        dilution.path("description").asText()),
                () -> assertEquals("integer", count.path("type").asText()),
                () -> assertEquals(1, count.path("minimum").asInt()),
                () -> assertEquals(10_000, count.path("maximum").asInt()),
                () -> assertEquals(1, joints.path("minItems").asInt()),
                () -> assertEquals(10_000, joints.path("maxItems").asInt()),
                () -> assertEquals(
                        "#/components/schemas/JointRequest",
                        joints.at("/items/$ref").asText()),
                () -> assertEquals(1, name.path("minLength").asInt()),
                () -> assertEquals(200, name.path("maxLength").asInt()),
                () -> assertTrue(
                        labour.path("description").asText().endsWith("not negative; /ms, /s, /min or /h."),
                        labour.toString()),
                () -> assertEquals(
                        Words.GAS.list(), texts(document.schema("GasRequest").at("/properties/mixture/enum"))));
    }

    @Test
    void theKindsOfJointAreTheSameEverywhere() {
        List<JsonSubTypes.Type> types =
                List.of(JointRequest.class.getAnnotation(JsonSubTypes.class).value());
        Map<String, String> read = types.stream()
                .collect(Collectors.toMap(
                        JsonSubTypes.Type::name, type -> type.value().getSimpleName(), (a, b) -> a, TreeMap::new));
        JsonNode schema = document.schema("JointRequest");
        Map<String, String> mapped = new TreeMap<>();
        schema.at("/discriminator/mapping")
                .properties()
                .forEach(entry ->
                        mapped.put(entry.getKey(), entry.getValue().asText().replaceAll(".*/", "")));
        Set<String> oneOf = new TreeSet<>();
        schema.path("oneOf")
                .forEach(kind -> oneOf.add(kind.path("$ref").asText().replaceAll(".*/", "")));
        Set<String> permitted = Arrays.stream(JointRequest.class.getPermittedSubclasses())
                .map(Class::getSimpleName)
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(5, read.size());
        assertEquals("kind", schema.at("/discriminator/propertyName").asText());
        assertEquals(read, mapped);
        assertEquals(new TreeSet<>(read.values()), oneOf);
        assertEquals(oneOf, permitted);
        assertEquals(
                types.stream().map(JsonSubTypes.Type::name).toList(),
                CatalogueAnswers.jointKinds().stream()
                        .map(CatalogueAnswers.KindRow::kind)
                        .toList());
        read.forEach((kind, name) -> {
            assertEquals(List.of(kind), texts(document.schema(name).at("/properties/kind/enum")));
            assertTrue(texts(document.schema(name).path("required")).contains("kind"), name);
            assertTrue(document.schema(name).path("properties").has("mark"), name + " has the fields of all kinds");
        });
    }

    @Test
    void aCautionStandsInFront() {
        String description = document.root().at("/info/description").asText();
        assertTrue(description.contains("No load is considered"), description);
        assertTrue(description.contains("the qualified procedure"), description);
        assertEquals(
                "http://127.0.0.1:8080", document.root().at("/servers/0/url").asText());
    }

    private static List<String> texts(JsonNode array) {
        List<String> all = new ArrayList<>();
        array.forEach(item -> all.add(item.asText()));
        return all;
    }
}
