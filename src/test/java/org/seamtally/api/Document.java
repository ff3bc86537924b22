package org.seamtally.api;

import static io.restassured.RestAssured.given;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonMetaSchema;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.NonValidationKeyword;
import com.networknt.schema.SchemaId;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;

/** The OpenAPI document as the running service gives it out, or as it stands in a file. */
public final class Document {

    private static final ObjectMapper JSON = new ObjectMapper();

    // where OpenAPI keeps its schemas: no word of JSON Schema
    private static final JsonSchemaFactory FACTORY = JsonSchemaFactory.getInstance(
            SpecVersion.VersionFlag.V202012,
            builder -> builder.metaSchema(JsonMetaSchema.builder(SchemaId.V202012, JsonMetaSchema.getV202012())
                    .keyword(new NonValidationKeyword("components"))
                    .build()));

    private final JsonNode root;

    private Document(JsonNode root) {
        this.root = root;
    }

    static Document live() {
        return new Document(read(given().get("/q/openapi?format=json").asString()));
    }

    public static Document of(JsonNode root) {
        return new Document(root);
    }

    static JsonNode read(String json) {
        try {
            return JSON.readTree(json);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    JsonNode root() {
        return root;
    }

    JsonNode schemas() {
        return root.at("/components/schemas");
    }

    JsonNode schema(String name) {
        return schemas().path(name);
    }

    /** What a reference in this document refers to; the node itself where it is none. */
    JsonNode resolved(JsonNode node) {
        return node.has("$ref") ? root.at(node.get("$ref").asText().substring(1)) : node;
    }

    /** An operation: its path, its method in lower case, what the document says of it. */
    record Operation(String path, String method, JsonNode node) {

        /** The schema of its answer. */
        JsonNode answer() {
            return node.at("/responses/200/content/application~1json/schema");
        }

        JsonNode body() {
            return node.at("/requestBody/content/application~1json");
        }
    }

    List<Operation> operations() {
        List<Operation> all = new ArrayList<>();
        root.path("paths")
                .properties()
                .forEach(path -> path.getValue()
                        .properties()
                        .forEach(method -> all.add(new Operation(path.getKey(), method.getKey(), method.getValue()))));
        return all;
    }

    /** Visits every schema in it, named ones and those inside them. */
    void eachSchema(BiConsumer<String, JsonNode> visitor) {
        schemas().properties().forEach(entry -> visit(entry.getKey(), entry.getValue(), visitor));
    }

    private static void visit(String path, JsonNode schema, BiConsumer<String, JsonNode> visitor) {
        visitor.accept(path, schema);
        schema.path("properties")
                .properties()
                .forEach(property -> visit(path + "." + property.getKey(), property.getValue(), visitor));
        for (String inner : List.of("items", "additionalProperties")) {
            if (schema.path(inner).isObject()) {
                visit(path + "[]", schema.get(inner), visitor);
            }
        }
    }

    /** What of an answer does not fit a schema. A field that the schema does not name does not fit either. */
    Set<ValidationMessage> misfits(JsonNode answer, JsonNode schema) {
        return closed(schema).validate(answer);
    }

    /** A schema that takes no field but those it names. */
    public JsonSchema closed(JsonNode schema) {
        ObjectNode closed = root.deepCopy();
        new Document(closed).eachSchema((path, node) -> {
            if (node.has("properties") && !node.has("additionalProperties")) {
                ((ObjectNode) node).put("additionalProperties", false);
            }
            // no word of JSON Schema either; which alternative it is, each says itself
            ((ObjectNode) node).remove("discriminator");
        });
        ObjectNode whole = JSON.createObjectNode();
        whole.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        whole.setAll((ObjectNode) schema.deepCopy());
        whole.set("components", closed.get("components"));
        return FACTORY.getSchema(whole);
    }

    Set<ValidationMessage> misfits(JsonNode answer, String schema) {
        return misfits(answer, JSON.createObjectNode().put("$ref", "#/components/schemas/" + schema));
    }
}
