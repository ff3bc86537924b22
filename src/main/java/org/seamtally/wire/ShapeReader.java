package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.BeanDescription;
import com.fasterxml.jackson.databind.DeserializationConfig;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.deser.BeanDeserializerModifier;
import com.fasterxml.jackson.databind.deser.std.DelegatingDeserializer;
import com.fasterxml.jackson.databind.jsontype.TypeDeserializer;
import com.fasterxml.jackson.databind.type.CollectionType;
import java.io.IOException;

/**
 * Looks at the shape of a part before it is read: an object or a list, whichever is due, and nothing else. The library by
 * itself would stop at an empty string, and would read a joint from a list of its kind and its fields too.
 */
final class ShapeReader extends DelegatingDeserializer {

    private static final long serialVersionUID = 1;

    private final JsonToken due;

    private ShapeReader(JsonDeserializer<?> part, JsonToken due) {
        super(part);
        this.due = due;
    }

    @Override
    protected JsonDeserializer<?> newDelegatingInstance(JsonDeserializer<?> part) {
        return new ShapeReader(part, due);
    }

    @Override
    public Object deserialize(JsonParser parser, DeserializationContext context) throws IOException {
        return parser.currentToken() == due ? super.deserialize(parser, context) : refuse(parser, context, due);
    }

    @Override
    public Object deserializeWithType(JsonParser parser, DeserializationContext context, TypeDeserializer kinds)
            throws IOException {
        return parser.currentToken() == due
                ? super.deserializeWithType(parser, context, kinds)
                : refuse(parser, context, due);
    }

    /** Notes the misfit and passes over it; null, as nothing was read. */
    static Object refuse(JsonParser parser, DeserializationContext context, JsonToken due) throws IOException {
        String message = due == JsonToken.START_ARRAY ? "a list is due here" : "an object is due here";
        Misfits.of(context).add(Misfits.path(parser), Violation.Key.SHAPE, message, null);
        parser.skipChildren();
        return null;
    }

    /** Puts such a reader before every part. */
    static final class Modifier extends BeanDeserializerModifier {

        private static final long serialVersionUID = 1;

        @Override
        public JsonDeserializer<?> modifyDeserializer(
                DeserializationConfig config, BeanDescription part, JsonDeserializer<?> reader) {
            Class<?> type = part.getBeanClass();
            // a joint's own kind is read from the middle of the object, its shape having been looked at before
            boolean kind = JointRequest.class.isAssignableFrom(type) && type != JointRequest.class;
            // a leaf takes any token, a name may be an analysis, and what the library knows by itself has its own
            // shapes
            boolean other = type == Leaf.class
                    || type == NameOrAnalysis.class
                    || type.getPackage() != JointRequest.class.getPackage();
            return kind || other ? reader : new ShapeReader(reader, JsonToken.START_OBJECT);
        }

        @Override
        public JsonDeserializer<?> modifyCollectionDeserializer(
                DeserializationConfig config, CollectionType type, BeanDescription part, JsonDeserializer<?> reader) {
            return new ShapeReader(reader, JsonToken.START_ARRAY);
        }
    }
}
