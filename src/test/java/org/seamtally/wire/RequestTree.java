package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.seamtally.quantity.UnitSystem;

/** A request to be changed field by field, and sent. Paths are written as a violation's. */
final class RequestTree {

    /** Reads and writes numbers digit for digit, apart from the reader under test. */
    static final JsonMapper PLAIN = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
            .build();

    static final Engine ENGINE = new Engine("test");

    private static final Path SAMPLE = Path.of("sample-jobs/trail-buggy-rear-bay.json");
    private static final Pattern STEP = Pattern.compile("([^.\\[\\]]+)|\\[(\\d+)]");

    private final JsonNode root;
    private final List<String> raws = new ArrayList<>();

    private RequestTree(JsonNode root) {
        this.root = root;
    }

    /** The sample frame with every optional part given. */
    static RequestTree sample() {
        try {
            return of(Files.readString(SAMPLE));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static RequestTree of(String json) {
        return new RequestTree(parse(json));
    }

    /** The same tree once more; what was put into it as raw text is left out. */
    static RequestTree copy(RequestTree other) {
        return new RequestTree(other.root.deepCopy());
    }

    /** A frame of these joints and nothing else. */
    static RequestTree frameOf(String... joints) {
        return of("{\"frame\": {\"joints\": [" + String.join(", ", joints) + "]}}");
    }

    static JsonNode parse(String json) {
        try {
            return PLAIN.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException(json, e);
        }
    }

    JsonNode root() {
        return root;
    }

    /**
     * Puts a value, whatever text it is: it need not be JSON.
     *
     * @param path such as {@code frame.joints[2].branch.wall}; what holds it is there already
     */
    RequestTree put(String path, String raw) {
        raws.add(raw);
        TextNode placeholder = TextNode.valueOf("<raw " + (raws.size() - 1) + ">");
        Object last = last(path);
        JsonNode parent = at(parent(path));
        if (last instanceof Integer index) {
            ArrayNode list = (ArrayNode) parent;
            if (index == list.size()) {
                list.add(placeholder);
            } else {
                list.set(index, placeholder);
            }
        } else {
            ((ObjectNode) parent).set((String) last, placeholder);
        }
        return this;
    }

    RequestTree drop(String path) {
        Object last = last(path);
        JsonNode parent = at(parent(path));
        if (last instanceof Integer index) {
            ((ArrayNode) parent).remove(index);
        } else {
            ((ObjectNode) parent).remove((String) last);
        }
        return this;
    }

    /** The node at a path. */
    JsonNode at(String path) {
        return at(root, path);
    }

    static JsonNode at(JsonNode from, String path) {
        JsonNode node = from;
        for (Object step : steps(path)) {
            node = step instanceof Integer index ? node.path(index) : node.path((String) step);
        }
        return node;
    }

    private static List<Object> steps(String path) {
        List<Object> steps = new ArrayList<>();
        Matcher matcher = STEP.matcher(path);
        while (matcher.find()) {
            steps.add(matcher.group(1) != null ? matcher.group(1) : Integer.valueOf(matcher.group(2)));
        }
        return steps;
    }

    private static Object last(String path) {
        List<Object> steps = steps(path);
        return steps.get(steps.size() - 1);
    }

    private static String parent(String path) {
        return path.substring(0, Math.max(0, Math.max(path.lastIndexOf('.'), path.lastIndexOf('['))));
    }

    String text() {
        String text = root.toString();
        for (int i = 0; i < raws.size(); i++) {
            text = text.replace("\"<raw " + i + ">\"", raws.get(i));
        }
        return text;
    }

    /** The answer, as it would be sent. */
    JsonNode estimate() {
        return estimate(UnitSystem.SI);
    }

    JsonNode estimate(UnitSystem units) {
        Outcome<FrameEstimateAnswer> outcome = send(text().getBytes(StandardCharsets.UTF_8), units);
        if (outcome instanceof Outcome.Refused<FrameEstimateAnswer> refused) {
            throw new AssertionError("refused: " + refused.problem());
        }
        return parse(json(((Outcome.Answered<FrameEstimateAnswer>) outcome).answer()));
    }

    /** The problem, where it must be one. */
    ProblemReport refused() {
        return refused(text().getBytes(StandardCharsets.UTF_8));
    }

    static ProblemReport refused(byte[] body) {
        Outcome<FrameEstimateAnswer> outcome = send(body, UnitSystem.SI);
        if (outcome instanceof Outcome.Answered<FrameEstimateAnswer>) {
            throw new AssertionError("answered");
        }
        return ((Outcome.Refused<FrameEstimateAnswer>) outcome).problem();
    }

    static Outcome<FrameEstimateAnswer> send(byte[] body, UnitSystem units) {
        try {
            return ENGINE.frameEstimate(new ByteArrayInputStream(body), units);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** As it is written to the wire: bytes, since those are what a client gets. */
    static String json(Object answer) {
        try {
            return new String(Json.mapper().writeValueAsBytes(answer), StandardCharsets.UTF_8);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
