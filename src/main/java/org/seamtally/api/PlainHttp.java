package org.seamtally.api;

import io.quarkus.vertx.http.HttpServerOptionsCustomizer;
import io.vertx.core.http.HttpServerOptions;
import jakarta.enterprise.context.ApplicationScoped;

/**
 * Without TLS the service speaks HTTP/1.1 alone. Offered a change to HTTP/2 that is not carried through, the server would
 * answer nothing at all; with it, all an estimate gains is a longer way.
 */
@ApplicationScoped
public class PlainHttp implements HttpServerOptionsCustomizer {

    @Override
    public void customizeHttpServer(HttpServerOptions options) {
        options.setHttp2ClearTextEnabled(false);
    }
}
