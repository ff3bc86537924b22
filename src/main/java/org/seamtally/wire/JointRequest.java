package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import jakarta.validation.Valid;
import org.eclipse.microprofile.openapi.annotations.media.DiscriminatorMapping;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.GivenJoint;
import org.seamtally.frame.JointShape;
import org.seamtally.frame.Settings;
import org.seamtally.quantity.Dimension;

/** A joint of any kind: what all kinds have in common. Each kind adds its own sizes and makes its own joint of them. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
    @JsonSubTypes.Type(value = TubeToTubeRequest.class, name = TubeToTubeRequest.KIND),
    @JsonSubTypes.Type(value = TubeToPlateRequest.class, name = TubeToPlateRequest.KIND),
    @JsonSubTypes.Type(value = PlateFilletRequest.class, name = PlateFilletRequest.KIND),
    @JsonSubTypes.Type(value = TubeSleeveRequest.class, name = TubeSleeveRequest.KIND),
    @JsonSubTypes.Type(value = PlugRequest.class, name = PlugRequest.KIND)
})
@Schema(
        description = "A joint to be welded; `kind` says which sizes it has.",
        oneOf = {
            TubeToTubeRequest.class,
            TubeToPlateRequest.class,
            PlateFilletRequest.class,
            TubeSleeveRequest.class,
            PlugRequest.class
        },
        discriminatorProperty = "kind",
        discriminatorMapping = {
            @DiscriminatorMapping(value = TubeToTubeRequest.KIND, schema = TubeToTubeRequest.class),
            @DiscriminatorMapping(value = TubeToPlateRequest.KIND, schema = TubeToPlateRequest.class),
            @DiscriminatorMapping(value = PlateFilletRequest.KIND, schema = PlateFilletRequest.class),
            @DiscriminatorMapping(value = TubeSleeveRequest.KIND, schema = TubeSleeveRequest.class),
            @DiscriminatorMapping(value = PlugRequest.KIND, schema = PlugRequest.class)
        })
public abstract sealed class JointRequest
        permits TubeToTubeRequest, TubeToPlateRequest, PlateFilletRequest, TubeSleeveRequest, PlugRequest {

    @Text(max = 40)
    @Schema(
            description = "What the drawing calls it; no two joints alike. Left out: its number in the order sent.",
            examples = "R1")
    public Leaf mark;

    @Whole(min = 1, max = 10_000)
    @Schema(description = "How many of them the frame has. Left out: 1.", examples = "2")
    public Leaf count;

    @Whole(min = 0, max = 100)
    @Schema(description = "Tack welds. Left out: as usual for the kind.", examples = "4")
    public Leaf tacks;

    @Whole(min = 1, max = 1000)
    @Schema(
            description =
                    "Arc-on stretches that make up the seam, each with its start. Left out: as usual for the kind.",
            examples = "4")
    public Leaf segments;

    @Truth
    @Schema(
            description = "Whether it is to be preheated. Left out: only where the joint brings preheat settings of its"
                    + " own.",
            examples = "true")
    public Leaf preheated;

    @Share(min = "0.1", max = "20")
    @Schema(
            description = "Factor on its handling time: above 1 where it is hard to reach. Left out: 1.",
            examples = "1.5")
    public Leaf access;

    @Valid
    @Schema(description = "Gas led through the inside of the tube. Left out: none.")
    public BackPurgeRequest backPurge;

    @Text(max = 100)
    @Schema(description = "Reference of the qualified welding procedure, printed through.", examples = "WPS 12 rev. 3")
    public Leaf procedure;

    @Valid
    @Schema(description = "Base steel of this joint, where it differs from the request's.")
    public SteelRequest steel;

    @Valid
    @Schema(description = "Filler of this joint, where it differs from the request's.")
    public FillerRequest filler;

    @Valid
    @Schema(description = "Arc settings of this joint, where they differ from the request's.")
    public ArcRequest arc;

    @Valid
    @Schema(description = "Gas settings of this joint, where they differ from the request's.")
    public GasRequest gas;

    @Valid
    @Schema(description = "Preheat of this joint, where it differs from the request's.")
    public PreheatRequest preheat;

    /** Kind and sizes, what was left out still open. */
    abstract JointShape shape();

    GivenJoint given() {
        return new GivenJoint(
                Read.text(mark),
                Read.whole(count),
                shape(),
                Read.whole(tacks),
                Read.whole(segments),
                Read.truth(preheated),
                Read.number(access),
                Read.maybe(backPurge).map(BackPurgeRequest::given),
                Read.maybe(Read.text(procedure)),
                settings());
    }

    private Settings settings() {
        return Read.settings(steel, filler, arc, gas, preheat);
    }

    static Double angle(Leaf angle) {
        return Read.quantity(angle, Dimension.ANGLE);
    }
}
