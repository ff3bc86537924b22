package org.seamtally.api;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.micrometer.core.instrument.FunctionCounter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import org.jboss.logging.Logger;
import org.seamtally.gas.KnownTransients;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Json;
import org.seamtally.wire.ProgramVersion;

/** What the resources share: one engine, one JSON writer. */
@ApplicationScoped
public class Service {

    private static final Logger LOG = Logger.getLogger(Service.class);

    @Produces
    @Singleton
    Engine engine() {
        return new Engine(ProgramVersion.text());
    }

    @Produces
    @Singleton
    ObjectMapper mapper() {
        return Json.mapper();
    }

    void started(@Observes StartupEvent event, Reach reach, Engine engine, MeterRegistry metrics) {
        LOG.info(reach.checked());
        KnownTransients starts = engine.starts();
        FunctionCounter.builder("seamtally.gas.starts.known", starts, KnownTransients::hits)
                .description("Gas starts that were known from an earlier request")
                .register(metrics);
        FunctionCounter.builder("seamtally.gas.starts.computed", starts, KnownTransients::misses)
                .description("Gas starts that had to be computed")
                .register(metrics);
        Gauge.builder("seamtally.gas.starts.kept", starts, KnownTransients::size)
                .description("Gas starts kept, at most " + starts.capacity())
                .register(metrics);
    }
}
