package org.seamtally.api;

import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.inject.Singleton;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.Path;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Methods that a path has, read off the resources: RFC 9110, 15.5.6 and 10.2.1 ask for them in a 405's Allow header,
 * which the framework leaves out, and in its answer to OPTIONS it offers HEAD where there is no GET.
 */
@Singleton
public class AllowedMethods {

    private record Endpoint(Pattern path, String method) {}

    private final List<Endpoint> endpoints;

    AllowedMethods(BeanManager beans) {
        endpoints = beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                .<Class<?>>map(bean -> bean.getBeanClass())
                .filter(type -> type.isAnnotationPresent(Path.class))
                .flatMap(type -> endpoints(type).stream())
                .toList();
    }

    /** Methods of a path, such as {@code GET, HEAD, OPTIONS}; empty where there is no such path. */
    Set<String> at(String path) {
        Set<String> methods = new TreeSet<>();
        endpoints.stream()
                .filter(endpoint -> endpoint.path.matcher(path).matches())
                .map(Endpoint::method)
                .forEach(methods::add);
        if (methods.contains(HttpMethod.GET)) {
            methods.add(HttpMethod.HEAD);
        }
        if (!methods.isEmpty()) {
            methods.add(HttpMethod.OPTIONS);
        }
        return methods;
    }

    private static List<Endpoint> endpoints(Class<?> resource) {
        List<Endpoint> found = new ArrayList<>();
        for (Method method : resource.getMethods()) {
            Path path = method.getAnnotation(Path.class);
            String template = resource.getAnnotation(Path.class).value() + (path == null ? "" : path.value());
            Arrays.stream(method.getAnnotations())
                    .map(annotation -> annotation.annotationType().getAnnotation(HttpMethod.class))
                    .filter(word -> word != null)
                    .forEach(word -> found.add(new Endpoint(pattern(template), word.value())));
        }
        return found;
    }

    /** A path's template as a pattern: a parameter takes one segment; a slash at the end is taken too. */
    private static Pattern pattern(String template) {
        return Pattern.compile(template.replaceAll("\\{[^}]+}", "[^/]+") + "/?");
    }
}
