package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.Arrays;
import java.util.List;

/** The kinds of joint that are taken, read off {@link JointRequest}. */
public final class JointKinds {

    private static final List<JsonSubTypes.Type> TYPES =
            List.of(JointRequest.class.getAnnotation(JsonSubTypes.class).value());

    private JointKinds() {}

    /** Their names, in order. */
    static List<String> names() {
        return TYPES.stream().map(JsonSubTypes.Type::name).toList();
    }

    /** The requests' classes, in the same order. */
    static List<Class<?>> classes() {
        return TYPES.stream().<Class<?>>map(JsonSubTypes.Type::value).toList();
    }

    /** The name of the kind that a class reads. */
    static String nameOf(Class<?> type) {
        return Arrays.stream(
                        JointRequest.class.getAnnotation(JsonSubTypes.class).value())
                .filter(kind -> kind.value() == type)
                .map(JsonSubTypes.Type::name)
                .findFirst()
                .orElseThrow();
    }
}
