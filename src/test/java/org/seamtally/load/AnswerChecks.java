package org.seamtally.load;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.seamtally.api.Document;

/** What every answer must be, whatever was asked. */
final class AnswerChecks {

    static final JsonMapper JSON = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private static final Set<String> BINARY = Set.of("application/pdf", "application/gzip");

    /** What speaks of the program's inside. No request here holds such words. */
    private static final Pattern INSIDE = Pattern.compile(
            "\\b(?:org\\.seamtally|java\\.[a-z]+|javax|jakarta|io\\.(?:quarkus|vertx|netty|smallrye)|com\\.fasterxml"
                    + "|org\\.(?:jboss|h2|postgresql|hibernate|jdbi))\\.[A-Za-z]|\\.java:\\d|\\bat [a-z]+\\.[a-z.]+\\("
                    + "|[a-z]Exception\\b|[a-z]Error\\b|\\bSQLSTATE|<!doctype html>.*Resource not found");

    /** A number that is none, in a table. */
    private static final Pattern NOT_FINITE = Pattern.compile("(?:^|,)-?(?:NaN|Infinity)(?:,|$)", Pattern.MULTILINE);

    private static final String PROBLEM = "application/problem+json";
    private static final int LONGEST_GIVEN = 80;

    private final Document schemas;
    private final Map<JsonNode, JsonSchema> compiled = new ConcurrentHashMap<>();

    AnswerChecks(ApiDocument document) {
        this.schemas = Document.of(document.root());
    }

    /** Whether the request was carried out. */
    static boolean isAccepted(RawConnection.Answer answer) {
        return answer.status() / 100 == 2;
    }

    /** What is wrong with an answer, in words; empty where nothing is. */
    List<String> faults(FuzzRequest request, RawConnection.Answer answer) {
        List<String> faults = new ArrayList<>();
        int status = answer.status();
        String type = answer.header("content-type").replaceAll(";.*", "").strip();
        if (status >= 500 && status != 503) {
            faults.add("status " + status);
        }
        Matcher inside = INSIDE.matcher(BINARY.contains(type) ? "" : answer.text());
        if (inside.find()) {
            faults.add("speaks of the program's inside: " + inside.group());
        }
        boolean asDescribed = Set.of(FuzzRequest.Touched.BODY).containsAll(request.touched);
        if (asDescribed && !request.operation.responses().containsKey(status)) {
            faults.add("status " + status + " is not described");
        }
        if (request.method.equals("HEAD") || status == 204 || status == 304) {
            return faults;
        }
        if ((status == 400 || status == 414 || status == 431) && answer.body().length == 0 && !request.isHttp()) {
            // the server refuses it before any code of ours is asked, and tells nothing
            return faults;
        }
        try {
            if (status >= 400) {
                problem(answer, type, faults);
            } else if (isAccepted(answer) && request.method.equals(request.operation.method())) {
                accepted(request, answer, type, faults);
            }
        } catch (JsonProcessingException e) {
            faults.add("is no JSON: " + e.getOriginalMessage());
        }
        return faults;
    }

    private void problem(RawConnection.Answer answer, String type, List<String> faults) throws JsonProcessingException {
        if (!type.equals(PROBLEM)) {
            faults.add("a problem as \"" + type + "\"");
            return;
        }
        JsonNode problem = JSON.readTree(answer.text());
        fits(JSON.createObjectNode().put("$ref", "#/components/schemas/ProblemReport"), problem, faults);
        if (problem.path("status").intValue() != answer.status()) {
            faults.add("a problem of another status: " + problem.path("status"));
        }
        if (answer.status() == 503 && answer.header("retry-after").isEmpty()) {
            faults.add("503 without Retry-After");
        }
        for (JsonNode violation : problem.path("violations")) {
            if (violation.path("given").asText().length() > LONGEST_GIVEN) {
                faults.add("what was given is not cut: " + violation.path("path"));
            }
        }
    }

    private void accepted(FuzzRequest request, RawConnection.Answer answer, String type, List<String> faults)
            throws JsonProcessingException {
        JsonNode content = request.operation
                .responses()
                .getOrDefault(answer.status(), JSON.missingNode())
                .path("content")
                .path(type);
        if (content.isMissingNode()) {
            // a changed path is another endpoint's, which answers as it is described itself
            if (!request.touched.contains(FuzzRequest.Touched.TARGET)) {
                faults.add("an answer that is not described: \"" + type + "\"");
            }
            return;
        }
        JsonNode schema =
                request.touched.contains(FuzzRequest.Touched.TARGET) ? JSON.missingNode() : content.path("schema");
        if (type.equals("application/json")) {
            json(schema, answer.text(), faults);
        } else if (type.equals("application/x-ndjson")) {
            String last = "";
            for (String line : answer.text().split("\n")) {
                json(schema, line, faults);
                last = line;
            }
            if (!last.contains("\"trailer\"")) {
                faults.add("lines without a trailer");
            }
        } else if (type.equals("text/csv") && NOT_FINITE.matcher(answer.text()).find()) {
            faults.add("a table with a number that is not finite");
        }
    }

    private void json(JsonNode schema, String text, List<String> faults) throws JsonProcessingException {
        JsonNode answer = JSON.readTree(text);
        if (!schema.isMissingNode()) {
            fits(schema, withoutEchoedNulls(answer), faults);
        }
        faults.addAll(AddedUp.faults(answer));
    }

    /** A field sent as null counts as left out, and what is kept of a request is told as it was sent. */
    private static JsonNode withoutEchoedNulls(JsonNode answer) {
        JsonNode pruned = answer.deepCopy();
        for (String echo : List.of("request", "prices")) {
            pruned.findValues(echo).forEach(AnswerChecks::prune);
        }
        return pruned;
    }

    private static void prune(JsonNode node) {
        if (node instanceof ObjectNode object) {
            List<String> nulls = object.properties().stream()
                    .filter(field -> field.getValue().isNull())
                    .map(Map.Entry::getKey)
                    .toList();
            object.remove(nulls);
        }
        node.forEach(AnswerChecks::prune);
    }

    private void fits(JsonNode schema, JsonNode answer, List<String> faults) {
        compiled.computeIfAbsent(schema, schemas::closed).validate(answer).stream()
                .map(misfit -> "does not fit its description: " + misfit.getMessage())
                .limit(3)
                .forEach(faults::add);
    }
}
