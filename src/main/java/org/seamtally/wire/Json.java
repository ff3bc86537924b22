package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.deser.BeanDeserializerFactory;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.ByteArrayOutputStream;
import java.io.IOException;

/** The one place where the JSON reader and writer are set up: the service, the shell and batches all use it. */
public final class Json {

    /** Levels of nesting that are read: a request has seven, and deep nesting is how parsers are attacked. */
    public static final int DEEPEST = 50;

    private static final JsonMapper MAPPER = build();

    private Json() {}

    /** The mapper, ready for use and not to be changed. */
    public static JsonMapper mapper() {
        return MAPPER;
    }

    /** An answer as it is sent. */
    static byte[] bytes(Object answer) {
        try {
            return MAPPER.writeValueAsBytes(answer);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("every answer can be written", e);
        }
    }

    /** A text of JSON without the blanks between its tokens, in UTF-8; tokens stay as they were sent, digit for digit. */
    static byte[] compact(byte[] json) throws IOException {
        try (JsonParser parser = MAPPER.createParser(json)) {
            parser.nextToken();
            return copy(parser);
        }
    }

    /** The same of one field of an object; null where it has no such field. */
    static byte[] compact(byte[] json, String field) throws IOException {
        try (JsonParser parser = MAPPER.createParser(json)) {
            parser.nextToken();
            for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
                parser.nextToken();
                if (name.equals(field)) {
                    return copy(parser);
                }
                parser.skipChildren();
            }
            return null;
        }
    }

    /** The value that the parser stands at. */
    private static byte[] copy(JsonParser parser) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (JsonGenerator generator = MAPPER.createGenerator(out)) {
            int depth = 0;
            do {
                JsonToken token = parser.currentToken();
                depth += token.isStructStart() ? 1 : token.isStructEnd() ? -1 : 0;
                if (token.isNumeric()) {
                    generator.writeNumber(parser.getText());
                } else {
                    generator.copyCurrentEvent(parser);
                }
            } while (depth > 0 && parser.nextToken() != null);
        }
        return out.toByteArray();
    }

    private static JsonMapper build() {
        JsonFactory factory = JsonFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                .streamReadConstraints(
                        StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
                .build();
        return new JsonMapper.Builder(new StrictMapper(factory))
                .enable(
                        DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES,
                        DeserializationFeature.FAIL_ON_TRAILING_TOKENS,
                        DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES,
                        DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .disable(SerializationFeature.FAIL_ON_EMPTY_BEANS)
                .visibility(PropertyAccessor.FIELD, JsonAutoDetect.Visibility.ANY)
                .visibility(PropertyAccessor.GETTER, JsonAutoDetect.Visibility.NONE)
                .visibility(PropertyAccessor.IS_GETTER, JsonAutoDetect.Visibility.NONE)
                .addHandler(new Misfits.Handler())
                .addModule(FigureWriter.addTo(new SimpleModule().setDeserializerModifier(new ShapeReader.Modifier())))
                .build();
    }

    /** A mapper whose readings are {@link Reading}s. */
    private static final class StrictMapper extends JsonMapper {

        private static final long serialVersionUID = 1;

        StrictMapper(JsonFactory factory) {
            super(factory);
            _deserializationContext = new Reading(BeanDeserializerFactory.instance);
        }

        private StrictMapper(StrictMapper from) {
            super(from);
        }

        @Override
        public JsonMapper copy() {
            return new StrictMapper(this);
        }
    }
}
