package org.seamtally.api;

import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.seamtally.batch.FrameWork;

/**
 * Who may compute. Estimates have a place a processor. Quotes have as many of their own, since they wait for the database
 * while they have one: where it is slow, estimates go on. Frames of streams and batches let both pass first.
 */
@ApplicationScoped
public class Admission {

    // nobody sits before a batch, but it gets through on a service that is never idle too: ten frames a second at least
    private static final Duration LONGEST_COURTESY = Duration.ofMillis(100);

    private final WaitingLine estimates;
    private final WaitingLine quotes;

    /**
     * @param atOnce of each kind at a time; empty: as many as there are processors
     * @param mostBytes that may wait for each of those
     * @param longestWait for a place
     */
    Admission(
            @ConfigProperty(name = "seamtally.estimates.at-once") Optional<Integer> atOnce,
            @ConfigProperty(name = "seamtally.estimates.waiting-bytes") long mostBytes,
            @ConfigProperty(name = "seamtally.estimates.longest-wait") Duration longestWait) {
        int places = atOnce.orElseGet(() -> Runtime.getRuntime().availableProcessors());
        estimates = new WaitingLine(places, mostBytes, longestWait, System::nanoTime);
        quotes = new WaitingLine(places, mostBytes, longestWait, System::nanoTime);
    }

    void started(@Observes StartupEvent event, MeterRegistry metrics) {
        Map.of("estimates", estimates, "quotes", quotes).forEach((of, line) -> {
            Gauge.builder("seamtally.admission.waiting", line, WaitingLine::waiting)
                    .description("Requests that wait for a place to be worked out")
                    .tag("of", of)
                    .register(metrics);
            Gauge.builder("seamtally.admission.waiting.size", line, WaitingLine::waitingBytes)
                    .description("What has arrived and is not yet worked on")
                    .baseUnit("bytes")
                    .tag("of", of)
                    .register(metrics);
            Gauge.builder("seamtally.admission.working", line, WaitingLine::working)
                    .description("Requests that are worked out now")
                    .tag("of", of)
                    .register(metrics);
        });
    }

    /** Of what is kept nowhere. */
    WaitingLine estimates() {
        return estimates;
    }

    /** Of what is kept. */
    WaitingLine quotes() {
        return quotes;
    }

    /** The same work, after whoever sits and waits. */
    FrameWork afterEstimates(FrameWork work) {
        return frames -> {
            estimates.letPass(LONGEST_COURTESY);
            return work.on(frames);
        };
    }
}
