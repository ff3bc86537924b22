package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The API's description, as far as requests are made from it: an endpoint that is added to it is asked without a word here. */
final class ApiDocument {

    /** What a path's entry holds besides its parameters and words. */
    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch", "head", "options");

    private final JsonNode root;
    private final List<Operation> operations = new ArrayList<>();

    /**
     * A parameter of an operation.
     *
     * @param in {@code path}, {@code query} or {@code header}
     */
    record Parameter(String name, String in, boolean required, JsonNode node) {}

    /**
     * An endpoint.
     *
     * @param method in capitals
     * @param path with its parameters in braces
     * @param bodies by media type, as the document describes them; empty where none is taken
     * @param responses by status, references resolved
     */
    record Operation(
            String method,
            String path,
            List<Parameter> parameters,
            Map<String, JsonNode> bodies,
            Map<Integer, JsonNode> responses) {

        String name() {
            return method + " " + path;
        }
    }

    private ApiDocument(JsonNode root) {
        this.root = root;
        root.path("paths")
                .properties()
                .forEach(path -> path.getValue().properties().forEach(entry -> {
                    if (METHODS.contains(entry.getKey())) {
                        operations.add(operation(path.getKey(), path.getValue(), entry.getKey(), entry.getValue()));
                    }
                }));
    }

    static ApiDocument read(Path file) throws IOException {
        return new ApiDocument(new YAMLMapper().readTree(file.toFile()));
    }

    static ApiDocument of(JsonNode root) {
        return new ApiDocument(root);
    }

    private Operation operation(String path, JsonNode beside, String method, JsonNode node) {
        List<Parameter> parameters = new ArrayList<>();
        ArrayNode named = JsonNodeFactory.instance.arrayNode();
        beside.path("parameters").forEach(named::add);
        node.path("parameters").forEach(named::add);
        for (JsonNode given : named) {
            JsonNode parameter = resolved(given);
            parameters.add(new Parameter(
                    parameter.path("name").asText(),
                    parameter.path("in").asText(),
                    parameter.path("required").asBoolean(),
                    parameter));
        }
        Map<String, JsonNode> bodies = new LinkedHashMap<>();
        resolved(node.path("requestBody"))
                .path("content")
                .properties()
                .forEach(entry -> bodies.put(entry.getKey(), entry.getValue()));
        Map<Integer, JsonNode> responses = new LinkedHashMap<>();
        node.path("responses")
                .properties()
                .forEach(entry -> responses.put(Integer.valueOf(entry.getKey()), resolved(entry.getValue())));
        return new Operation(method.toUpperCase(java.util.Locale.ROOT), path, parameters, bodies, responses);
    }

    JsonNode root() {
        return root;
    }

    List<Operation> operations() {
        return operations;
    }

    /** What a reference in this document refers to; the node itself where it is none. */
    JsonNode resolved(JsonNode node) {
        JsonNode found = node;
        while (found.has("$ref")) {
            found = root.at(found.path("$ref").asText().substring(1));
        }
        return found;
    }
}
