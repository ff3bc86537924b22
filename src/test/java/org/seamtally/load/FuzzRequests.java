package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Makes requests that fit the API's description, of every endpoint in it alike. */
final class FuzzRequests {

    private final ApiDocument document;
    private final ValidValues values;
    private final KnownThings known;
    private final Map<String, Double> seldom;

    /** @param requests how many will be asked for */
    FuzzRequests(ApiDocument document, KnownThings known, long requests) {
        this.document = document;
        this.values = new ValidValues(document);
        this.known = known;
        // a print takes as long as twenty others; a copy of all that is kept the longer the more that is: a long run
        // asks
        // for no more of them than a short one
        this.seldom = Map.of("/v1/quotes/{id}/print", 0.4, "/v1/backup", Math.min(0.2, 1000.0 / requests));
    }

    FuzzRequest any(Dice dice) {
        ApiDocument.Operation operation = dice.one(document.operations());
        while (!dice.chance(seldom.getOrDefault(operation.path(), 1.0))) {
            operation = dice.one(document.operations());
        }
        return of(operation, dice);
    }

    FuzzRequest of(ApiDocument.Operation operation, Dice dice) {
        FuzzRequest request = new FuzzRequest(operation);
        target(request, dice);
        for (ApiDocument.Parameter parameter : operation.parameters()) {
            switch (parameter.in()) {
                case "query" -> query(request, parameter, dice);
                case "header" -> header(request, parameter, dice);
                default -> {
                    // of the path: stands in it
                }
            }
        }
        accept(request, dice);
        if (!operation.bodies().isEmpty()) {
            body(request, dice);
        }
        return request;
    }

    private void target(FuzzRequest request, Dice dice) {
        String prefix = "";
        for (String word : request.operation.path().substring(1).split("/")) {
            String segment = word;
            if (word.startsWith("{")) {
                String name = word.substring(1, word.length() - 1);
                JsonNode schema = request.operation.parameters().stream()
                        .filter(parameter -> parameter.in().equals("path")
                                && parameter.name().equals(name))
                        .findFirst()
                        .orElseThrow()
                        .node();
                segment = pathValue(prefix, schema, dice);
            }
            request.segments.add(segment);
            prefix += "/" + word;
        }
    }

    /** One that an answer told of, where there is one: a made one is seldom there. */
    private String pathValue(String prefix, JsonNode parameter, Dice dice) {
        JsonNode schema = document.resolved(parameter.path("schema"));
        List<String> told = known.at(prefix);
        if (!told.isEmpty() && dice.chance(0.9)) {
            return dice.one(told);
        }
        if (schema.path("type").asText().equals("integer")) {
            return Integer.toString(dice.from(1, 3));
        }
        if (schema.path("format").asText().equals("uuid")) {
            return new UUID(dice.bits(), dice.bits()).toString();
        }
        return parameter.path("example").asText("thing") + " " + dice.below(40);
    }

    private void query(FuzzRequest request, ApiDocument.Parameter parameter, Dice dice) {
        if (!parameter.required() && !dice.chance(0.4)) {
            return;
        }
        JsonNode schema = document.resolved(parameter.node().path("schema"));
        List<String> told = known.at(request.operation.path());
        boolean isId = !schema.has("enum")
                && schema.path("type").asText().equals("string")
                && !told.isEmpty()
                && !schema.has("maxLength");
        String value;
        if (isId) {
            value = dice.one(told);
        } else if (schema.path("type").asText().equals("integer") && !schema.has("maximum")) {
            value = Integer.toString(dice.from(1, 2));
        } else {
            value = values.value(schema, dice).asText();
        }
        request.query.add(Map.entry(parameter.name(), value));
    }

    private void header(FuzzRequest request, ApiDocument.Parameter parameter, Dice dice) {
        boolean isTag = parameter.name().equalsIgnoreCase("If-Match");
        if (!parameter.required() && !dice.chance(isTag ? 0.9 : 0.3)) {
            return;
        }
        JsonNode schema = document.resolved(parameter.node().path("schema"));
        String value;
        if (isTag) {
            String tag = known.tag(request.path());
            value = tag == null ? "*" : tag;
        } else if (schema.has("enum")) {
            value = dice.one(List.copyOf(texts(schema.path("enum"))));
        } else {
            // a few alike: what is sent again under a key is another matter than what is new
            value = dice.chance(0.2) ? "key-" + dice.below(20) : "key-" + Long.toHexString(dice.bits());
        }
        request.headers.put(parameter.name(), value);
    }

    private static List<String> texts(JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(item -> texts.add(item.asText()));
        return texts;
    }

    /** One of the media types that it answers with, or none asked for. */
    private static void accept(FuzzRequest request, Dice dice) {
        List<String> types = new ArrayList<>();
        request.operation.responses().forEach((status, response) -> {
            if (status < 300) {
                response.path("content").fieldNames().forEachRemaining(types::add);
            }
        });
        if (!types.isEmpty() && dice.chance(0.5)) {
            request.headers.put("Accept", dice.one(types));
        }
    }

    private void body(FuzzRequest request, Dice dice) {
        String type = dice.one(List.copyOf(request.operation.bodies().keySet()));
        JsonNode media = request.operation.bodies().get(type);
        request.headers.put("Content-Type", type);
        if (!type.startsWith("multipart/")) {
            request.parts.add(part(null, type, media, dice));
            return;
        }
        request.headers.put("Content-Type", type + "; boundary=" + FuzzRequest.BOUNDARY);
        JsonNode form = document.resolved(media.path("schema"));
        List<String> required = texts(form.path("required"));
        form.path("properties").properties().forEach(property -> {
            String name = property.getKey();
            if (!required.contains(name) && dice.chance(0.4)) {
                return;
            }
            String taken = media.path("encoding").path(name).path("contentType").asText("text/plain");
            String partType = dice.one(List.of(taken.split(", *")));
            // a part that is a whole file is described where it may come by itself
            boolean isFile =
                    document.resolved(property.getValue()).path("type").asText().equals("string");
            JsonNode alone = isFile ? request.operation.bodies().get(partType) : null;
            request.parts.add(
                    alone != null
                            ? part(name, partType, alone, dice)
                            : new FuzzRequest.Part(
                                    name, partType, List.of(values.value(property.getValue(), dice)), null));
        });
    }

    private FuzzRequest.Part part(String name, String type, JsonNode media, Dice dice) {
        if (type.endsWith("ndjson")) {
            List<JsonNode> lines = new ArrayList<>();
            for (int i = dice.from(1, 4); i > 0; i--) {
                lines.add(values.body(media, dice));
            }
            return new FuzzRequest.Part(name, type, lines, null);
        }
        JsonNode value = values.body(media, dice);
        return value.isTextual()
                ? new FuzzRequest.Part(name, type, List.of(), value.textValue())
                : new FuzzRequest.Part(name, type, List.of(value), null);
    }
}
