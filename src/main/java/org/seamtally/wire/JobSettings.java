package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * How a shop works, for all frames of a job file: the parts of a request beside the frame. A frame that names a part has it
 * as it brings it (none where it is null); what it leaves out it takes from here, in whole parts.
 */
public final class JobSettings {

    /** None. */
    public static final JobSettings NONE = new JobSettings(Map.of());

    private final Map<String, String> parts;

    private JobSettings(Map<String, String> parts) {
        this.parts = parts;
    }

    /**
     * Reads settings.
     *
     * @param json a {@link JobSettingsRequest}
     * @throws RefusedException where anything is wrong with them
     */
    public static JobSettings read(byte[] json) throws RefusedException {
        try {
            RequestReader.read(new ByteArrayInputStream(json), JobSettingsRequest.class);
            try (JsonParser parser = Json.mapper().createParser(json)) {
                return new JobSettings(parts(parser));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can always be fetched", e);
        }
    }

    private static Map<String, String> parts(JsonParser parser) throws IOException {
        Map<String, String> parts = new LinkedHashMap<>();
        parser.nextToken();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            if (parser.nextToken() != JsonToken.VALUE_NULL) {
                parts.put(name, copy(parser));
            }
        }
        return parts;
    }

    private static String copy(JsonParser parser) throws IOException {
        ByteArrayOutputStream copy = new ByteArrayOutputStream();
        try (JsonGenerator generator = Json.mapper().createGenerator(copy)) {
            // digit by digit: the range of a number has been looked at as it was sent
            generator.copyCurrentStructureExact(parser);
        }
        return copy.toString(StandardCharsets.UTF_8);
    }

    /** Writes all parts into a request that has none of them yet. */
    void write(JsonGenerator generator) throws IOException {
        for (Map.Entry<String, String> part : parts.entrySet()) {
            generator.writeFieldName(part.getKey());
            generator.writeRawValue(part.getValue());
        }
    }

    /** The request with the parts that it leaves out; as it is where it is no JSON object, which its reader will tell. */
    public byte[] into(byte[] request) {
        if (parts.isEmpty()) {
            return request;
        }
        Set<String> named = named(request);
        if (named == null || named.containsAll(parts.keySet())) {
            return request;
        }
        StringBuilder more = new StringBuilder();
        parts.forEach((name, value) -> {
            if (!named.contains(name)) {
                more.append(named.isEmpty() && more.isEmpty() ? "\"" : ",\"");
                more.append(name).append("\":").append(value);
            }
        });
        return spliced(request, more.append('}').toString().getBytes(StandardCharsets.UTF_8));
    }

    /** With the object's last brace replaced: behind it there are only blanks. */
    private static byte[] spliced(byte[] request, byte[] end) {
        int brace = request.length - 1;
        while (request[brace] != '}') {
            brace--;
        }
        byte[] whole = new byte[brace + end.length];
        System.arraycopy(request, 0, whole, 0, brace);
        System.arraycopy(end, 0, whole, brace, end.length);
        return whole;
    }

    /** Fields of the outermost object; null where the text is not one whole object. */
    private static Set<String> named(byte[] request) {
        try (JsonParser parser = Json.mapper().createParser(request)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                return null;
            }
            Set<String> named = new HashSet<>();
            while (parser.nextToken() != JsonToken.END_OBJECT) {
                named.add(parser.currentName());
                parser.nextToken();
                parser.skipChildren();
            }
            return parser.nextToken() == null ? named : null;
        } catch (JsonProcessingException e) {
            return null;
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can always be fetched", e);
        }
    }
}
