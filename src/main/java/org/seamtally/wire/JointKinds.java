package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The kinds of joint that are taken, read off {@link JointRequest}. */
public final class JointKinds {

    private static final List<JsonSubTypes.Type> TYPES =
            List.of(JointRequest.class.getAnnotation(JsonSubTypes.class).value());

    // an annotation gives its values by reflection, each time
    private static final Map<Class<?>, String> NAMES =
            TYPES.stream().collect(Collectors.toUnmodifiableMap(JsonSubTypes.Type::value, JsonSubTypes.Type::name));

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
        return Optional.ofNullable(NAMES.get(type)).orElseThrow();
    }
}
