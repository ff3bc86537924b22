package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A request in the making: what a mutation changes, and at last the bytes that are sent. */
final class FuzzRequest {

    /** What was changed of a request that fitted the document. */
    enum Touched {
        TARGET,
        QUERY,
        HEADERS,
        BODY
    }

    /**
     * A part of a body, or all of it.
     *
     * @param name in a form; null where the body is this part alone
     * @param trees JSON texts, a line each; empty where {@code text} stands
     */
    record Part(String name, String mediaType, List<JsonNode> trees, String text) {}

    /** Between the parts of a form. */
    static final String BOUNDARY = "part-of-the-form";

    private static final int LONGEST_HEADER = 8192;

    final ApiDocument.Operation operation;
    final Set<Touched> touched = EnumSet.noneOf(Touched.class);
    String method;
    /** Segments of the path, not yet encoded; a mutated one may be as it is to be sent. */
    final List<String> segments = new ArrayList<>();

    final List<Map.Entry<String, String>> query = new ArrayList<>();
    final Map<String, String> headers = new LinkedHashMap<>();
    final List<Part> parts = new ArrayList<>();
    /** The body's text as it is sent; made of the parts when it is first asked for. */
    private byte[] body;
    /** Whether the target is sent as it stands, without the encoding that is due. */
    boolean rawTarget;

    FuzzRequest(ApiDocument.Operation operation) {
        this.operation = operation;
        this.method = operation.method();
    }

    boolean hasBody() {
        return !parts.isEmpty() || body != null;
    }

    /** The thing that is asked for, without query: {@code /v1/quotes/3f1c…/print}. */
    String path() {
        StringBuilder path = new StringBuilder();
        for (String segment : segments) {
            path.append('/').append(rawTarget ? segment : encoded(segment));
        }
        return path.toString();
    }

    private String target() {
        StringBuilder target = new StringBuilder(path());
        char mark = '?';
        for (Map.Entry<String, String> parameter : query) {
            target.append(mark)
                    .append(rawTarget ? parameter.getKey() : encoded(parameter.getKey()))
                    .append('=')
                    .append(rawTarget ? parameter.getValue() : encoded(parameter.getValue()));
            mark = '&';
        }
        return target.toString();
    }

    /** Whether its head is what HTTP and this service's limit of its length take: no other is shown to the service's own code. */
    boolean isHttp() {
        try {
            URI uri = new URI(target());
            return uri.toString().startsWith("/")
                    && headers.values().stream()
                            .allMatch(value -> value.length() < LONGEST_HEADER && value.indexOf(0) < 0);
        } catch (URISyntaxException e) {
            return false;
        }
    }

    byte[] body() {
        if (body == null) {
            body = written().getBytes(StandardCharsets.UTF_8);
        }
        return body;
    }

    void body(byte[] bytes) {
        body = bytes;
    }

    private String written() {
        if (parts.isEmpty()) {
            return "";
        }
        if (parts.get(0).name() == null) {
            return written(parts.get(0));
        }
        StringBuilder form = new StringBuilder();
        for (Part part : parts) {
            form.append("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"" + part.name() + "\"\r\n");
            form.append("Content-Type: " + part.mediaType() + "\r\n\r\n" + written(part) + "\r\n");
        }
        return form.append("--" + BOUNDARY + "--\r\n").toString();
    }

    private static String written(Part part) {
        StringBuilder text = new StringBuilder();
        for (JsonNode tree : part.trees()) {
            text.append(part.trees().size() > 1 ? tree + "\n" : tree.toString());
        }
        return FieldMutations.unwrapped(part.trees().isEmpty() ? part.text() : text.toString());
    }

    /** The request as it goes over the wire. */
    byte[] bytes(String host) {
        byte[] content = hasBody() ? body() : new byte[0];
        StringBuilder head = new StringBuilder(method + " " + target() + " HTTP/1.1\r\n");
        if (!headers.containsKey("Host")) {
            head.append("Host: ").append(host).append("\r\n");
        }
        headers.forEach(
                (name, value) -> head.append(name).append(": ").append(value).append("\r\n"));
        boolean chunked = headers.containsKey("Transfer-Encoding");
        if (hasBody() && !chunked) {
            head.append("Content-Length: ").append(content.length).append("\r\n");
        }
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.writeBytes(head.append("\r\n").toString().getBytes(StandardCharsets.UTF_8));
        if (chunked) {
            if (content.length > 0) {
                all.writeBytes((Integer.toHexString(content.length) + "\r\n").getBytes(StandardCharsets.US_ASCII));
                all.writeBytes(content);
                all.writeBytes("\r\n".getBytes(StandardCharsets.US_ASCII));
            }
            all.writeBytes("0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
        } else {
            all.writeBytes(content);
        }
        return all.toByteArray();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
