package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointShape;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.TubeSleeve;

/** One end of a sleeve. */
@Schema(description = "One end of a sleeve, welded all round to the tube inside it.")
public final class TubeSleeveRequest extends JointRequest implements CrossChecked {

    static final String KIND = "tube-sleeve";

    @NotNull
    @Valid
    @Schema(description = "The inner tube.")
    public TubeRequest branch;

    @NotNull
    @Valid
    @Schema(description = "The sleeve; the inner tube goes into it.")
    public TubeRequest sleeve;

    @Valid
    @Schema(description = "Section of the fillet; the leg on the sleeve's end is at most its wall.")
    public FilletRequest fillet;

    @Override
    JointShape shape() {
        return defaults -> new TubeSleeve(
                branch.diameter(),
                branch.thickness(),
                sleeve.diameter(),
                sleeve.thickness(),
                defaults.fillet(
                        FilletRequest.given(fillet),
                        Math.min(branch.thickness(), sleeve.thickness()),
                        OptionalDouble.of(sleeve.thickness())));
    }

    @Override
    public void check(Contradictions contradictions) {
        Double inner = TubeRequest.tryDiameter(branch);
        Double outer = TubeRequest.tryDiameter(sleeve);
        Double wall = TubeRequest.tryWall(sleeve);
        Double leg = fillet == null ? null : Read.tryQuantity(fillet.leg(), Dimension.LENGTH);
        if (leg != null && wall != null && leg > wall) {
            contradictions.add(
                    "fillet.leg",
                    Violation.Key.CONTRADICTION,
                    "one leg lies on the sleeve's end: at most the sleeve's wall",
                    fillet.leg());
        }
        if (inner != null && outer != null && wall != null && !TubeSleeve.fits(inner, outer, wall)) {
            contradictions.add(
                    "branch.outsideDiameter",
                    Violation.Key.CONTRADICTION,
                    "the inner tube goes into the sleeve: at most the sleeve's outside diameter less twice its wall",
                    branch.outsideDiameter());
        }
    }
}
