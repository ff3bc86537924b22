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
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Paths and the methods that they have, read off the resources. */
@Singleton
public class Endpoints {

    private record Endpoint(String template, Pattern path, String method) {}

    private final List<Endpoint> endpoints;

    Endpoints(BeanManager beans) {
        endpoints = beans.getBeans(Object.class, Any.Literal.INSTANCE).stream()
                .<Class<?>>map(bean -> bean.getBeanClass())
                .filter(type -> type.isAnnotationPresent(Path.class))
                .flatMap(type -> endpoints(type).stream())
                .toList();
    }

    /**
     * Methods of a path, such as {@code GET, HEAD, OPTIONS}; empty where there is no such path. RFC 9110, 15.5.6 and
     * 10.2.1 ask for them in a 405's Allow header, which the framework leaves out, and in its answer to OPTIONS it offers
     * HEAD where there is no GET.
     */
    Set<String> methods(String path) {
        Set<String> methods = new TreeSet<>();
        at(path).map(Endpoint::method).forEach(methods::add);
        if (methods.contains(HttpMethod.GET)) {
            methods.add(HttpMethod.HEAD);
        }
        if (!methods.isEmpty()) {
            methods.add(HttpMethod.OPTIONS);
        }
        return methods;
    }

    /** The template of a path, such as {@code /v1/quotes/{id}}; empty where there is no such path. */
    Optional<String> template(String path) {
        return at(path).map(Endpoint::template).findFirst();
    }

    private Stream<Endpoint> at(String path) {
        return endpoints.stream().filter(endpoint -> endpoint.path.matcher(path).matches());
    }

    private static List<Endpoint> endpoints(Class<?> resource) {
        List<Endpoint> found = new ArrayList<>();
        for (Method method : resource.getMethods()) {
            Path path = method.getAnnotation(Path.class);
            String template = resource.getAnnotation(Path.class).value() + (path == null ? "" : path.value());
            Arrays.stream(method.getAnnotations())
                    .map(annotation -> annotation.annotationType().getAnnotation(HttpMethod.class))
                    .filter(word -> word != null)
                    .forEach(word -> found.add(new Endpoint(template, pattern(template), word.value())));
        }
        return found;
    }

    /** A path's template as a pattern: a parameter takes one segment; a slash at the end is taken too. */
    private static Pattern pattern(String template) {
        return Pattern.compile(template.replaceAll("\\{[^}]+}", "[^/]+") + "/?");
    }
}
