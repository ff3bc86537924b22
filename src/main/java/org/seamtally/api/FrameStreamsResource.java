package org.seamtally.api;

import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.InstantSource;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.seamtally.batch.BatchRun;
import org.seamtally.batch.CsvResults;
import org.seamtally.batch.Form;
import org.seamtally.batch.FrameWork;
import org.seamtally.batch.JobFiles;
import org.seamtally.batch.JobFrames;
import org.seamtally.batch.NdjsonResults;
import org.seamtally.batch.Progress;
import org.seamtally.batch.ResultSink;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Engine;
import org.seamtally.wire.RefusedException;

/** Job files straight through: estimated while they are read, and kept nowhere. */
@Path("/v1")
@RolesAllowed({Roles.ESTIMATOR, Roles.PRICE_KEEPER, Roles.MACHINE})
public class FrameStreamsResource {

    // one stream, one thread: many streams share the processors as they come, and a big file is what batches are for
    private static final int WORKERS = 1;

    private final Engine engine;
    private final FrameCounters counters;
    private final OpenStreams streams;
    private final Admission admission;
    private final InstantSource clock;

    FrameStreamsResource(
            Engine engine, FrameCounters counters, OpenStreams streams, Admission admission, InstantSource clock) {
        this.engine = engine;
        this.counters = counters;
        this.streams = streams;
        this.admission = admission;
        this.clock = clock;
    }

    @POST
    @Path("/frame-estimates")
    @Consumes({StreamTypes.NDJSON, StreamTypes.CSV, StreamTypes.PARTS})
    @Produces({StreamTypes.NDJSON, StreamTypes.CSV})
    @Blocking
    // the document has one operation a path and method: it is completed from what EstimatesResource says
    @Operation(hidden = true)
    public Response frameEstimates(
            InputStream body,
            @Context UriInfo uri,
            @Context HttpHeaders headers,
            @Context Request request,
            @Context RoutingContext context)
            throws IOException, RefusedException {
        UnitSystem units = Query.units(uri);
        Form form = StreamTypes.asked(request);
        OpenStreams.Place place = streams.begin();
        boolean begun = false;
        try {
            StreamBody read = new StreamBody(body, clock);
            Upload upload = Upload.of(StreamTypes.of(headers), read);
            JobFrames frames = JobFiles.open(upload.jobs(), upload.form(), upload.settings());
            StreamingOutput results = new StreamedAnswer(() -> place, context, out -> {
                ResultSink sink = sink(form, units, out);
                // what has been worked out goes out before the sender is waited for
                read.answeringOn(sink::flush);
                run(frames, units, sink);
            });
            begun = true;
            return Response.ok(results).type(StreamTypes.answered(form)).build();
        } finally {
            if (!begun) {
                place.close();
            }
        }
    }

    private void run(JobFrames frames, UnitSystem units, ResultSink sink) throws IOException {
        FrameWork work = admission.afterEstimates(
                counters.counted(FrameCounters.From.STREAM, group -> engine.jobLines(group, units)));
        BatchRun.run(frames, work, WORKERS, sink, Progress.UNWATCHED);
    }

    private static ResultSink sink(Form form, UnitSystem units, OutputStream out) throws IOException {
        return form == Form.CSV ? new CsvResults(out, units) : new NdjsonResults(out);
    }
}
