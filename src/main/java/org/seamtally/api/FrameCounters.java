package org.seamtally.api;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.util.List;
import org.seamtally.batch.FrameWork;
import org.seamtally.wire.JobLine;

/** Counts the frames of job files that were worked on: a chunk that had to be worked on twice counts twice. */
@ApplicationScoped
public class FrameCounters {

    /** Where frames come from. */
    enum From {
        STREAM("stream"),
        BATCH("batch");

        private final String word;

        From(String word) {
            this.word = word;
        }
    }

    private final MeterRegistry metrics;

    FrameCounters(MeterRegistry metrics) {
        this.metrics = metrics;
    }

    void started(@Observes StartupEvent event) {
        for (From from : From.values()) {
            // there from the start, at nought: a rate of what is not there is no rate
            counter(from, "done");
            counter(from, "refused");
        }
    }

    /** The same work, counted. */
    FrameWork counted(From from, FrameWork work) {
        Counter done = counter(from, "done");
        Counter refused = counter(from, "refused");
        return frames -> {
            List<JobLine> lines = work.on(frames);
            lines.forEach(line -> (line.refused() ? refused : done).increment());
            return lines;
        };
    }

    private Counter counter(From from, String outcome) {
        return Counter.builder("seamtally.batch.frames")
                .description("Frames of job files that were worked on")
                .tag("from", from.word)
                .tag("outcome", outcome)
                .register(metrics);
    }
}
