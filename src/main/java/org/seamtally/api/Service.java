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
import org.seamtally.frame.EarlierWork;
import org.seamtally.frame.Recent;
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
        EarlierWork earlier = engine.earlier();
        count(metrics, "seamtally.gas.starts", "Gas starts", earlier.starts());
        count(metrics, "seamtally.seams", "Seams", earlier.seams());
    }

    private static void count(MeterRegistry metrics, String name, String what, Recent<?, ?> recent) {
        FunctionCounter.builder(name + ".known", recent, Recent::hits)
                .description(what + " that were known from an earlier request")
                .register(metrics);
        FunctionCounter.builder(name + ".computed", recent, Recent::misses)
                .description(what + " that had to be computed")
                .register(metrics);
        Gauge.builder(name + ".kept", recent, Recent::size)
                .description(what + " kept, at most " + recent.capacity())
                .register(metrics);
    }
}
