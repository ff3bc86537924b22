package org.seamtally.api;

import io.micrometer.core.instrument.Meter;
import io.micrometer.core.instrument.Tag;
import io.micrometer.core.instrument.config.MeterFilter;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;

/**
 * Under what paths the time of requests is counted. The framework counts what no endpoint took under the path that was
 * sent, such as one with a method that it has not, and after a hundred paths counts no new one: whoever sends made-up paths
 * would end the counting of endpoints that were not asked for yet.
 */
public class CountedPaths {

    private static final String COUNTED = "http.server.requests";
    private static final String PATH = "uri";

    /** What is counted of paths that are none. */
    private static final String UNKNOWN = "UNKNOWN";

    @Produces
    @Singleton
    MeterFilter byEndpoint(Endpoints endpoints) {
        return new MeterFilter() {
            @Override
            public Meter.Id map(Meter.Id id) {
                // beside endpoints only files of the page and the framework's own pages succeed, of which there are a
                // few
                if (!id.getName().equals(COUNTED) || "SUCCESS".equals(id.getTag("outcome"))) {
                    return id;
                }
                String path = id.getTag(PATH);
                return path != null && path.startsWith("/")
                        ? id.withTag(Tag.of(PATH, endpoints.template(path).orElse(UNKNOWN)))
                        : id;
            }
        };
    }
}
