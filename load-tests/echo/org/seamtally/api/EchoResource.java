package org.seamtally.api;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.IOException;
import java.io.InputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.seamtally.batch.BatchRun;
import org.seamtally.batch.Form;
import org.seamtally.batch.FrameWork;
import org.seamtally.batch.JobFiles;
import org.seamtally.batch.JobFrames;
import org.seamtally.batch.NdjsonResults;
import org.seamtally.batch.Progress;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.Echo;
import org.seamtally.wire.Engine;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.RefusedException;

/** The same bodies through the same stack, answered from what was worked out before. Of load tests alone. */
@Path("/echo")
@RolesAllowed({Roles.ESTIMATOR, Roles.MACHINE})
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
public class EchoResource {

    private final Echo echo;
    private final ObjectMapper json;

    EchoResource(Engine engine, ObjectMapper json) {
        this.echo = new Echo(engine);
        this.json = json;
    }

    @POST
    @Path("/frame-estimates")
    @Operation(hidden = true)
    public Response frameEstimate(InputStream body) throws IOException {
        return answer(echo.frameEstimate(WholeBodies.of(body), UnitSystem.SI));
    }

    @POST
    @Path("/gas-setup-comparisons")
    @Operation(hidden = true)
    public Response comparison(InputStream body) throws IOException {
        return answer(echo.comparison(WholeBodies.of(body), UnitSystem.SI));
    }

    @POST
    @Path("/streams")
    @Consumes("application/x-ndjson")
    @Produces("application/x-ndjson")
    @Operation(hidden = true)
    public Response stream(InputStream body) throws IOException, RefusedException {
        JobFrames frames = JobFiles.open(body, Form.NDJSON, null);
        StreamingOutput results = out ->
                BatchRun.run(frames, FrameWork.each(echo::jobLine), 1, new NdjsonResults(out), Progress.UNWATCHED);
        return Response.ok(results).type("application/x-ndjson").build();
    }

    private Response answer(Outcome<?> outcome) throws IOException {
        return outcome instanceof Outcome.Refused<?> refused
                ? Problems.response(refused.problem())
                : Response.ok(json.writeValueAsBytes(((Outcome.Answered<?>) outcome).answer()))
                        .build();
    }
}
