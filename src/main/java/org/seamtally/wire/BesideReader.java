package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Reads a record one of whose parts is marked {@link Beside}, as strictly as the library reads others: in one pass, so that
 * paths are those of what was sent, and unknown fields are told with all the names that there are.
 *
 * @param <R> the record
 */
abstract class BesideReader<R extends Record> extends StdDeserializer<R> {

    private static final long serialVersionUID = 1;

    private final transient Class<R> type;
    private final transient Map<String, RecordComponent> fields = new HashMap<>();

    BesideReader(Class<R> type) {
        super(type);
        this.type = type;
        gather(type);
    }

    private void gather(Class<?> holder) {
        for (RecordComponent component : holder.getRecordComponents()) {
            if (isBeside(component)) {
                gather(component.getType());
            } else {
                fields.put(component.getName(), component);
            }
        }
    }

    private static boolean isBeside(RecordComponent component) {
        try {
            return component
                    .getDeclaringRecord()
                    .getDeclaredField(component.getName())
                    .isAnnotationPresent(Beside.class);
        } catch (NoSuchFieldException e) {
            throw new IllegalStateException("every component of a record is a field", e);
        }
    }

    @Override
    public Collection<Object> getKnownPropertyNames() {
        return new ArrayList<>(fields.keySet());
    }

    @Override
    public R deserialize(JsonParser parser, DeserializationContext context) throws IOException {
        if (parser.currentToken() != JsonToken.START_OBJECT) {
            return type.cast(ShapeReader.refuse(parser, context, JsonToken.START_OBJECT));
        }
        Map<String, Object> values = new HashMap<>();
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            JsonToken value = parser.nextToken();
            RecordComponent field = fields.get(name);
            if (field == null) {
                context.handleUnknownProperty(parser, this, type, name);
            } else if (value != JsonToken.VALUE_NULL) {
                JavaType due = context.getTypeFactory().constructType(field.getGenericType());
                values.put(name, context.readValue(parser, due));
            }
        }
        return type.cast(made(type, values));
    }

    private Object made(Class<?> holder, Map<String, Object> values) {
        List<Object> arguments = Arrays.stream(holder.getRecordComponents())
                .map(component ->
                        isBeside(component) ? made(component.getType(), values) : values.get(component.getName()))
                .collect(Collectors.toCollection(ArrayList::new));
        try {
            return holder.getDeclaredConstructor(Arrays.stream(holder.getRecordComponents())
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new))
                    .newInstance(arguments.toArray());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("a request record is made of whatever was sent", e);
        }
    }
}
