package org.seamtally.load;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What answers have told of what is kept: what stands in a path's braces, and the tags of things. The latest of each. */
final class KnownThings {

    private static final int MOST = 60;

    private final Map<String, List<String>> byPrefix = new LinkedHashMap<>();
    private final Map<String, String> tags = latest();

    private static <K, V> Map<K, V> latest() {
        return new LinkedHashMap<>() {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > 10 * MOST;
            }
        };
    }

    /** Values of the parameter that follows a path's beginning, such as {@code /v1/quotes}. */
    synchronized List<String> at(String prefix) {
        return List.copyOf(byPrefix.getOrDefault(prefix, List.of()));
    }

    /** The latest tag of the thing that a path is of, or of a part of it; null where none was told. */
    synchronized String tag(String path) {
        for (String part = path; part.length() > 1; part = part.substring(0, part.lastIndexOf('/'))) {
            if (tags.containsKey(part)) {
                return tags.get(part);
            }
        }
        return null;
    }

    /** Learns from an answer that a request was accepted with. */
    synchronized void learn(ApiDocument document, FuzzRequest request, JsonNode answer, String tag, boolean removed) {
        String[] words = request.operation.path().substring(1).split("/");
        StringBuilder prefix = new StringBuilder();
        for (int i = 0; i < words.length && i < request.segments.size(); i++) {
            if (words[i].startsWith("{")) {
                if (removed) {
                    byPrefix.getOrDefault(prefix.toString(), new ArrayList<>()).remove(request.segments.get(i));
                } else {
                    add(prefix.toString(), request.segments.get(i));
                }
            }
            prefix.append('/').append(words[i]);
        }
        for (ApiDocument.Operation operation : document.operations()) {
            String path = operation.path();
            String rest = path.startsWith(prefix + "/{") ? path.substring(prefix.length() + 2) : "";
            if (!rest.isEmpty() && rest.indexOf('}') == rest.length() - 1) {
                String name = rest.substring(0, rest.length() - 1);
                told(prefix.toString(), answer.path(name));
                answer.path("items").forEach(item -> told(prefix.toString(), item.path(name)));
                if (tag != null && answer.has(name)) {
                    tags.put(prefix + "/" + answer.path(name).asText(), tag);
                }
            }
        }
        if (tag != null) {
            tags.put(request.path(), tag);
        }
    }

    private void told(String prefix, JsonNode value) {
        if (value.isTextual()) {
            add(prefix, value.textValue());
        }
    }

    private void add(String prefix, String value) {
        List<String> values = byPrefix.computeIfAbsent(prefix, any -> new ArrayList<>());
        if (!values.contains(value)) {
            values.add(value);
            if (values.size() > MOST) {
                values.remove(0);
            }
        }
    }
}
