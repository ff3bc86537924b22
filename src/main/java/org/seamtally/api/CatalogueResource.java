package org.seamtally.api;

import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.seamtally.wire.CatalogueAnswers;

/** Reference data. */
@Path("/v1/catalogue")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.ESTIMATOR, Roles.PRICE_KEEPER, Roles.READER, Roles.MACHINE})
@Tag(name = "catalogue", description = "Reference data, each row with its source.")
public class CatalogueResource {

    @GET
    @Path("/steels")
    @Operation(operationId = "listSteels", summary = "Base steels", description = "Base steels used for tube frames.")
    public List<CatalogueAnswers.SteelRow> steels(@Context UriInfo uri) {
        return CatalogueAnswers.steels(Query.units(uri));
    }

    @GET
    @Path("/fillers")
    @Operation(
            operationId = "listFillers",
            summary = "Filler rods",
            description = "Filler rods by their classification.")
    public List<CatalogueAnswers.FillerRow> fillers(@Context UriInfo uri) {
        return CatalogueAnswers.fillers(Query.units(uri));
    }

    @GET
    @Path("/gases")
    @Operation(
            operationId = "listGases",
            summary = "Shielding gases",
            description = "Shielding gases and their properties.")
    public List<CatalogueAnswers.GasRow> gases(@Context UriInfo uri) {
        Query.units(uri);
        return CatalogueAnswers.gases();
    }

    @GET
    @Path("/fuels")
    @Operation(operationId = "listFuels", summary = "Fuels", description = "Fuels for preheating.")
    public List<CatalogueAnswers.FuelRow> fuels(@Context UriInfo uri) {
        return CatalogueAnswers.fuels(Query.units(uri));
    }

    @GET
    @Path("/tubes")
    @Operation(operationId = "listTubes", summary = "Tube sizes", description = "Round tubes as they are sold.")
    public List<CatalogueAnswers.TubeRow> tubes(@Context UriInfo uri) {
        return CatalogueAnswers.tubes(Query.units(uri));
    }

    @GET
    @Path("/joint-kinds")
    @Operation(
            operationId = "listJointKinds",
            summary = "Kinds of joint",
            description = "Kinds of joint with their fields and ranges.")
    public List<CatalogueAnswers.KindRow> jointKinds(@Context UriInfo uri) {
        Query.units(uri);
        return CatalogueAnswers.jointKinds();
    }
}
