package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointShape;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.TubeToTube;

/** A coped tube on the side of another. */
@Schema(description = "A coped tube (the branch) on the side of another (the main).")
public final class TubeToTubeRequest extends JointRequest implements CrossChecked {

    static final String KIND = "tube-to-tube";

    @NotNull
    @Valid
    @Schema(description = "The tube that ends in the joint.")
    public TubeRequest branch;

    @NotNull
    @Valid
    @Schema(description = "The tube that runs through.")
    public TubeRequest main;

    @Within(value = Dimension.ANGLE, min = "20 deg", max = "160 deg")
    @Schema(description = "Angle between the axes. Left out: 90 deg.")
    public Leaf angle;

    @Within(value = Dimension.LENGTH, min = "-1 m", max = "1 m")
    @Schema(
            description = "Distance between the axes; the branch may not overhang the main tube. Left out: none.",
            examples = "0.1 in")
    public Leaf offset;

    @Valid
    @Schema(description = "Section of the fillet.")
    public FilletRequest fillet;

    @Override
    JointShape shape() {
        return defaults -> new TubeToTube(
                branch.diameter(),
                branch.thickness(),
                main.diameter(),
                main.thickness(),
                defaults.angle(angle(angle)),
                defaults.offset(Read.length(offset)),
                defaults.fillet(
                        FilletRequest.given(fillet),
                        Math.min(branch.thickness(), main.thickness()),
                        java.util.OptionalDouble.empty()));
    }

    @Override
    public void check(Contradictions contradictions) {
        Double ofBranch = TubeRequest.tryDiameter(branch);
        Double ofMain = TubeRequest.tryDiameter(main);
        Double between = offset == null ? Double.valueOf(0) : Read.tryQuantity(offset, Dimension.LENGTH);
        if (ofBranch == null || ofMain == null || between == null || TubeToTube.fits(ofBranch, ofMain, between)) {
            return;
        }
        if (TubeToTube.fits(ofBranch, ofMain, 0)) {
            contradictions.add(
                    "offset",
                    Violation.Key.CONTRADICTION,
                    "offset and half the branch's diameter together are at most half the main tube's",
                    offset);
        } else {
            contradictions.add(
                    "branch.outsideDiameter",
                    Violation.Key.CONTRADICTION,
                    "the branch is at most as wide as the main tube",
                    branch.outsideDiameter());
        }
    }
}
