package org.seamtally.api;

import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import java.util.Locale;
import java.util.Set;

/** Requests whose body is a job file: read line by line, it may be of any size. */
final class JobFileRequests {

    private static final Set<String> PATHS = Set.of("/v1/frame-estimates", "/v1/batches");

    private JobFileRequests() {}

    static boolean isOne(HttpServerRequest request) {
        String type = request.getHeader("Content-Type");
        return request.method() == HttpMethod.POST
                && PATHS.contains(request.path().replaceAll("/$", ""))
                && type != null
                && !type.toLowerCase(Locale.ROOT).startsWith("application/json");
    }
}
