package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonAutoDetect;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.deser.BeanDeserializerFactory;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;

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
                .addModule(new SimpleModule().setDeserializerModifier(new ShapeReader.Modifier()))
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
