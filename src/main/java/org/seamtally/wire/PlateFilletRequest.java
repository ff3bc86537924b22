package org.seamtally.wire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import java.util.OptionalDouble;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointShape;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.PlateFillet;

/** A straight fillet along a plate's edge. */
@Schema(description = "A straight fillet along the edge of a plate, tab or gusset.")
public final class PlateFilletRequest extends JointRequest {

    static final String KIND = "plate-fillet";

    @NotNull
    @Valid
    @Schema(description = "The plate.")
    public PlateRequest plate;

    @NotNull
    @Within(value = Dimension.LENGTH, min = "1 mm", max = "20 m")
    @Schema(description = "Length of the seam.", examples = "2.5 in")
    public Leaf length;

    @Within(value = Dimension.ANGLE, min = "20 deg", max = "160 deg")
    @Schema(description = "The dihedral angle itself, between the two faces. Left out: 90 deg.")
    public Leaf angle;

    @Valid
    @Schema(description = "Section of the fillet.")
    public FilletRequest fillet;

    @Override
    JointShape shape() {
        return defaults -> new PlateFillet(
                plate.wall(),
                Read.length(length),
                defaults.angle(angle(angle)),
                defaults.fillet(FilletRequest.given(fillet), plate.wall(), OptionalDouble.of(plate.wall())));
    }
}
