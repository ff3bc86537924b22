package org.seamtally.api;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Request;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.InputStream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.enums.ParameterIn;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.seamtally.quantity.UnitSystem;
import org.seamtally.wire.ArcTimeAnswer;
import org.seamtally.wire.ComparisonAnswer;
import org.seamtally.wire.ComparisonRequest;
import org.seamtally.wire.DepositAnswer;
import org.seamtally.wire.Engine;
import org.seamtally.wire.FrameEstimateAnswer;
import org.seamtally.wire.FrameEstimateRequest;
import org.seamtally.wire.FrameTotalsAnswer;
import org.seamtally.wire.GasLossAnswer;
import org.seamtally.wire.GasLossRequest;
import org.seamtally.wire.JointPreheatAnswer;
import org.seamtally.wire.OneJointRequest;
import org.seamtally.wire.Outcome;
import org.seamtally.wire.SteelReviewAnswer;
import org.seamtally.wire.SteelReviewRequest;

/** What is worked out and kept nowhere. */
@Path("/v1")
@Consumes(MediaType.APPLICATION_JSON)
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.ESTIMATOR, Roles.PRICE_KEEPER, Roles.MACHINE})
@Tag(name = "estimates", description = "Worked out from what is sent, and kept nowhere.")
public class EstimatesResource {

    private final Engine engine;
    private final Admission admission;
    private final ObjectMapper json;

    EstimatesResource(Engine engine, Admission admission, ObjectMapper json) {
        this.engine = engine;
        this.admission = admission;
        this.json = json;
    }

    @POST
    @Path("/frame-estimates")
    @Operation(
            operationId = "estimateFrame",
            summary = "Estimate a frame",
            description =
                    "The whole frame: per joint, per frame, for the order, and priced where prices are sent. A job"
                            + " file is taken too: application/x-ndjson, text/csv, or both parts of multipart/form-data; its"
                            + " frames are answered in its order while it is read, as application/x-ndjson or text/csv, each with"
                            + " its estimate or its problem, and a trailer ends them: an answer without it was cut.")
    @RequestBody(
            required = true,
            description = "The frame, the shop's settings and its prices.",
            content = @Content(schema = @Schema(implementation = FrameEstimateRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "The estimate.",
            content = @Content(schema = @Schema(implementation = FrameEstimateAnswer.class)))
    public Response frameEstimate(InputStream body, @Context UriInfo uri, @Context Request request) throws IOException {
        // where a path has bodies of several types, the framework picks by the body's and forgets what is to be
        // answered
        Acceptable.of(request, MediaType.APPLICATION_JSON_TYPE);
        return answer(body, uri, engine::frameEstimate);
    }

    @POST
    @Path("/frame-totals")
    @Operation(
            operationId = "totalFrame",
            summary = "Estimate a frame in brief",
            description =
                    "The same estimate in a fraction of the text: what it says of the frame, a line of each joint, cautions"
                            + " once for all their joints, and one joint in full where it is asked for. For whoever"
                            + " estimates at each keystroke.")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = FrameEstimateRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "The estimate in brief.",
            content = @Content(schema = @Schema(implementation = FrameTotalsAnswer.class)))
    @Parameter(
            name = "joint",
            in = ParameterIn.QUERY,
            description = "The joint that is answered in full, by its place in the list. Left out: none.",
            schema = @Schema(type = SchemaType.INTEGER, minimum = "1"))
    public Response frameTotals(InputStream body, @Context UriInfo uri) throws IOException {
        Query.OfTotals asked = Query.totals(uri);
        return answer(body, asked.units(), (in, units) -> engine.frameTotals(in, units, asked.joint()));
    }

    @POST
    @Path("/deposits")
    @Operation(
            operationId = "workOutDeposit",
            summary = "One joint's deposit",
            description = "One joint's seam length, deposit volume, filler mass and rods.")
    @RequestBody(
            required = true,
            description = "The joint.",
            content = @Content(schema = @Schema(implementation = OneJointRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "Seam, deposit and filler.",
            content = @Content(schema = @Schema(implementation = DepositAnswer.class)))
    @Parameter(
            name = "course",
            in = ParameterIn.QUERY,
            description = "Whether the answer tells the places along the seam too. Left out: false.",
            schema = @Schema(type = SchemaType.BOOLEAN, defaultValue = "false"))
    public Response deposit(InputStream body, @Context UriInfo uri) throws IOException {
        Query.OfDeposit asked = Query.deposit(uri);
        return answer(body, asked.units(), (in, units) -> engine.deposit(in, units, asked.course()));
    }

    @POST
    @Path("/arc-times")
    @Operation(
            operationId = "workOutArcTime",
            summary = "One joint's arc time",
            description = "One joint's travel speed, arc time and heat input.")
    @RequestBody(
            required = true,
            description = "The joint.",
            content = @Content(schema = @Schema(implementation = OneJointRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "The arc.",
            content = @Content(schema = @Schema(implementation = ArcTimeAnswer.class)))
    public Response arcTime(InputStream body, @Context UriInfo uri) throws IOException {
        return answer(body, uri, engine::arcTime);
    }

    @POST
    @Path("/gas-losses")
    @Operation(
            operationId = "workOutGasLoss",
            summary = "One set-up's gas losses",
            description = "Gas of one start by part, the steady state, and the start transient's curve.")
    @RequestBody(
            required = true,
            description = "The set-up.",
            content = @Content(schema = @Schema(implementation = GasLossRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "What each start takes.",
            content = @Content(schema = @Schema(implementation = GasLossAnswer.class)))
    public Response gasLoss(InputStream body, @Context UriInfo uri) throws IOException {
        return answer(body, uri, engine::gasLoss);
    }

    @POST
    @Path("/gas-setup-comparisons")
    @Operation(
            operationId = "compareSetUps",
            summary = "Compare gas set-ups",
            description = "Several set-ups under one duty: loss a year, peak flow, payback, and the best orifice.")
    @RequestBody(
            required = true,
            description = "The duty and the set-ups.",
            content = @Content(schema = @Schema(implementation = ComparisonRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "The set-ups beside the first.",
            content = @Content(schema = @Schema(implementation = ComparisonAnswer.class)))
    public Response comparison(InputStream body, @Context UriInfo uri) throws IOException {
        return answer(body, uri, engine::comparison);
    }

    @POST
    @Path("/preheats")
    @Operation(
            operationId = "workOutPreheat",
            summary = "One joint's preheat",
            description = "One joint's preheat: energy, fuel and time, and the recommended temperature.")
    @RequestBody(
            required = true,
            description = "The joint and how it is preheated.",
            content = @Content(schema = @Schema(implementation = OneJointRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "What preheating takes.",
            content = @Content(schema = @Schema(implementation = JointPreheatAnswer.class)))
    public Response preheat(InputStream body, @Context UriInfo uri) throws IOException {
        return answer(body, uri, engine::preheat);
    }

    @POST
    @Path("/steel-reviews")
    @Operation(
            operationId = "reviewSteel",
            summary = "Review a steel with its fillers",
            description =
                    "What the weld becomes with each filler: composition, hardenability, cooling, hardness beside the"
                            + " seam, preheat; ranked, with the reasons.")
    @RequestBody(
            required = true,
            description = "The steel, how it is welded, and the fillers.",
            content = @Content(schema = @Schema(implementation = SteelReviewRequest.class)))
    @APIResponse(
            responseCode = "200",
            description = "The fillers, best first.",
            content = @Content(schema = @Schema(implementation = SteelReviewAnswer.class)))
    public Response steelReview(InputStream body, @Context UriInfo uri) throws IOException {
        return answer(body, uri, engine::steelReview);
    }

    /** A part of the engine that reads a body and answers in units. */
    private interface Entry<A> {
        Outcome<A> ask(InputStream in, UnitSystem units) throws IOException;
    }

    private <A> Response answer(InputStream body, UriInfo uri, Entry<A> entry) throws IOException {
        return answer(body, Query.units(uri), entry);
    }

    private <A> Response answer(InputStream body, UnitSystem units, Entry<A> entry) throws IOException {
        return admission.estimates().<Response, RuntimeException>work(WholeBodies.of(body), arrived -> {
            Outcome<A> outcome = entry.ask(arrived, units);
            // written while it has its place: that is work too, and a reader who takes his time holds no place then
            return outcome instanceof Outcome.Refused<A> refused
                    ? Problems.response(refused.problem())
                    : Response.ok(json.writeValueAsBytes(((Outcome.Answered<A>) outcome).answer()))
                            .build();
        });
    }
}
