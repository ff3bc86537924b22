package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointShape;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.TubeToPlate;

/** A tube's end on the face of a plate. */
@Schema(description = "A tube's end on the face of a plate.")
public final class TubeToPlateRequest extends JointRequest {

    static final String KIND = "tube-to-plate";

    @NotNull
    @Valid
    @Schema(description = "The tube that ends on the plate.")
    public TubeRequest branch;

    @NotNull
    @Valid
    @Schema(description = "The plate.")
    public PlateRequest plate;

    @Within(value = Dimension.ANGLE, min = "20 deg", max = "160 deg")
    @Schema(description = "Angle between axis and plate; 90 deg is square. Left out: 90 deg.")
    public Leaf angle;

    @Valid
    @Schema(description = "Section of the fillet.")
    public FilletRequest fillet;

    @Override
    JointShape shape() {
        return defaults -> new TubeToPlate(
                branch.diameter(),
                branch.thickness(),
                plate.wall(),
                defaults.angle(angle(angle)),
                defaults.fillet(
                        FilletRequest.given(fillet),
                        Math.min(branch.thickness(), plate.wall()),
                        OptionalDouble.empty()));
    }
}
