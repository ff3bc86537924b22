package org.seamtally.wire;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.databind.DatabindContext;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.deser.DeserializationProblemHandler;
import com.fasterxml.jackson.databind.jsontype.TypeIdResolver;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/** What does not fit while a body is read: fields nobody knows, kinds nobody knows, parts of another shape. */
final class Misfits {

    private static final Object KEY = Misfits.class;

    // a body of nothing but unknown fields should not be answered with a list as long as itself
    private static final int MOST = 1000;

    private final List<Violation> found = new ArrayList<>();

    List<Violation> found() {
        return found;
    }

    void add(String path, String key, String message, String given, String... taken) {
        if (found.size() < MOST) {
            found.add(new Violation(path, key, message, given, taken.length == 0 ? null : List.of(taken)));
        }
    }

    /** A field that nobody knows, where the parser stands on its value. */
    void addUnknown(JsonParser parser, String name, String message, Collection<String> known) {
        add(
                path(parser),
                Violation.Key.UNKNOWN_FIELD,
                message,
                "\"" + Quoted.cut(name) + "\"",
                known.toArray(String[]::new));
    }

    /** The collection that belongs to a reading in progress. */
    static Misfits of(DatabindContext context) {
        return (Misfits) context.getAttribute(KEY);
    }

    /** The attribute to read with. */
    static Object key() {
        return KEY;
    }

    /** Where a reader stands, such as {@code frame.joints[2].branch}. */
    static String path(JsonParser parser) {
        return path(standsIn(parser));
    }

    /** What holds the value that a reader stands at: at the start of a structure the parser is inside it already. */
    static JsonStreamContext standsIn(JsonParser parser) {
        JsonStreamContext context = parser.getParsingContext();
        return parser.currentToken() != null && parser.currentToken().isStructStart() ? context.getParent() : context;
    }

    private static String path(JsonStreamContext context) {
        StringBuilder path = new StringBuilder();
        append(context, path);
        return path.toString();
    }

    private static void append(JsonStreamContext context, StringBuilder path) {
        if (context == null || context.inRoot()) {
            return;
        }
        append(context.getParent(), path);
        if (context.inArray()) {
            path.append('[').append(context.getCurrentIndex()).append(']');
        } else if (context.getCurrentName() != null) {
            if (path.length() > 0) {
                path.append('.');
            }
            path.append(Quoted.cut(context.getCurrentName()));
        }
    }

    /** Turns each misfit into a finding and reads on. */
    static final class Handler extends DeserializationProblemHandler {

        @Override
        public boolean handleUnknownProperty(
                DeserializationContext context,
                JsonParser parser,
                JsonDeserializer<?> deserializer,
                Object beanOrClass,
                String name)
                throws IOException {
            Collection<Object> known = deserializer == null ? null : deserializer.getKnownPropertyNames();
            TreeSet<String> names = new TreeSet<>();
            if (known != null) {
                known.forEach(property -> names.add(property.toString()));
            }
            String nearest = Nearest.to(name, names);
            Misfits.of(context)
                    .addUnknown(
                            parser,
                            name,
                            nearest == null
                                    ? "no such field here"
                                    : "no such field here; the nearest is \"" + nearest + "\"",
                            names);
            parser.skipChildren();
            return true;
        }

        @Override
        public JavaType handleUnknownTypeId(
                DeserializationContext context, JavaType base, String id, TypeIdResolver resolver, String message) {
            List<String> kinds = JointKinds.names();
            String nearest = Nearest.to(id, kinds);
            Misfits.of(context)
                    .add(
                            path(context.getParser()),
                            Violation.Key.UNKNOWN_WORD,
                            nearest == null
                                    ? "no such kind of joint"
                                    : "no such kind of joint; the nearest is \"" + nearest + "\"",
                            "\"" + Quoted.cut(id) + "\"",
                            kinds.toArray(String[]::new));
            return context.constructType(Void.class);
        }

        @Override
        public JavaType handleMissingTypeId(
                DeserializationContext context, JavaType base, TypeIdResolver resolver, String message) {
            List<String> kinds = JointKinds.names();
            Misfits.of(context)
                    .add(
                            path(context.getParser()) + ".kind",
                            Violation.Key.MISSING,
                            "a joint names its kind",
                            null,
                            kinds.toArray(String[]::new));
            return context.constructType(Void.class);
        }
    }
}
